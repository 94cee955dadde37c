import type { EventCode } from '#rules';
import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import { badUserInput } from '../platform/errors/api-error.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { today } from '../technique/age.js';
import { techniqueEvent } from './analytics.resolver.js';
import { CompetitionNotesService } from './competition-notes.service.js';
import { CompetitionNotes } from './competition-notes.types.js';
import { flightOf } from './flight-view.js';
import { FlightArgs, ThrowFlight } from './flight.types.js';
import { SquadService } from './squad.service.js';
import { SquadFault, SquadLine } from './squad.types.js';

/** What a coach asks of many athletes at once, and of a throw by itself. */
@Resolver()
export class SquadResolver {
  constructor(
    private readonly squad: SquadService,
    private readonly competitions: CompetitionNotesService,
  ) {}

  @Query(() => [SquadLine], {
    complexity: 20,
    description: 'The athletes whom the viewer coaches, by name: who is due, and what was not looked for.',
  })
  @Needs('coach')
  async squadOverview(
    @Viewer() viewer: Identity,
    @Args('on', { type: () => CalendarDate, nullable: true, description: 'Absent: today.' })
    on?: string | null,
  ): Promise<SquadLine[]> {
    return this.squad.overview(on ?? today(), viewer);
  }

  @Query(() => SquadFault, {
    description: 'One point across the athletes whom the viewer coaches.',
  })
  @Needs('coach')
  async squadFault(
    @Args('event', { type: () => EventEnum }) event: EventCode,
    @Args('code') code: string,
    @Viewer() viewer: Identity,
  ): Promise<SquadFault> {
    return this.squad.fault(techniqueEvent(event), code, viewer);
  }

  @Query(() => CompetitionNotes, {
    nullable: true,
    description: 'Null: there is no such competition, or nobody in it whom the viewer follows.',
  })
  @Needs('coach', 'athlete', 'guardian')
  async competitionNotes(
    @Args('competitionId', { type: () => ID }, new ReadId('Competition')) competitionId: string,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionNotes | null> {
    return this.competitions.notes(competitionId, viewer);
  }

  @Query(() => ThrowFlight, { description: 'Computed from what is sent alone.' })
  @Needs('coach', 'athlete', 'guardian')
  throwFlight(@Args() args: FlightArgs): ThrowFlight {
    const flight = flightOf(args);
    if (flight === null) throw IN_METRES;
    return flight;
  }
}

const IN_METRES = badUserInput('The mark is not in metres.', [
  { path: ['mark'], rule: 'markUnit', message: 'mark must be in metres', remedy: 'Send it like "50.00".' },
]);
