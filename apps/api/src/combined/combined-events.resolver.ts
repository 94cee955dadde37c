import { combinedJournal, combinedOfficialResults, type CombinedEntryRow } from '#persistence';
import { componentProgress, windEventsOf } from '#rules';
import { Args, Context, ID, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { isDeepStrictEqual } from 'node:util';
import { isKeptBack } from '../platform/competition/visible.js';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import { Database } from '../platform/database/database.js';
import { forbidden, unauthenticated } from '../platform/errors/api-error.js';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Public, Viewer } from '../platform/identity/rights.js';
import { globalId } from '../platform/inputs/global-id.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { CombinedEvent, combinedEventObject } from '../platform/objects/combined-event.type.js';
import { competitionObject } from '../platform/objects/competition.type.js';
import { Json } from '../platform/scalars/json.js';
import { combinedResult, combinedSheet } from './combined-documents.js';
import { CombinedEventsService, isCrew } from './combined-events.service.js';
import {
  CombinedJournalEntryConnection,
  CombinedOpenQuestion,
  type CombinedJournalEntry,
} from './combined-journal.types.js';
import type { LoadedCombined } from './combined-loaded.js';
import { CombinedStanding } from './combined-standing.types.js';
import { standingView } from './combined-standing-view.js';
import { CombinedComponent, CombinedEntrant } from './combined.types.js';

type Row = CombinedEvent['row'];

/** What a combined event shows to everybody who may see it, and its journal to those who work at it. */
@Resolver(() => CombinedEvent)
export class CombinedEventsResolver {
  private readonly loader = loaderPerRequest((rows: readonly Row[]) => this.events.loadAll(rows));

  constructor(
    private readonly database: Database,
    private readonly events: CombinedEventsService,
  ) {}

  @Query(() => CombinedEvent, {
    nullable: true,
    description: 'Null: not there, or not published and not yours.',
  })
  @Public()
  async combinedEvent(
    @Args('id', { type: () => ID }, new ReadId('CombinedEvent')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEvent | null> {
    const row = await this.events.find(id, viewer);
    return row && combinedEventObject(row);
  }

  @ResolveField(() => [CombinedEntrant], { complexity: 20, description: 'In the original order.' })
  async entrants(
    @Parent() { row }: CombinedEvent,
    @Context() context: RequestContext,
  ): Promise<CombinedEntrant[]> {
    const { entrants } = await this.loaded(row, context);
    return entrants.map(({ entrant, displayName, club }) => ({
      id: globalId('CombinedEntrant', entrant.id),
      bib: entrant.bib,
      displayName,
      club,
      isGuest: entrant.guest,
    }));
  }

  @ResolveField(() => [CombinedComponent], { complexity: 10, description: 'In the order of the programme.' })
  async components(
    @Parent() { row }: CombinedEvent,
    @Context() context: RequestContext,
  ): Promise<CombinedComponent[]> {
    return componentsOf(await this.loaded(row, context));
  }

  @ResolveField(() => CombinedStanding, {
    description: 'Points, totals after every event and places with their reasons.',
  })
  async standing(
    @Parent() { row }: CombinedEvent,
    @Context() context: RequestContext,
  ): Promise<CombinedStanding> {
    const loaded = await this.loaded(row, context);
    const audience = isCrew(context.identity, loaded) ? 'crew' : 'public';
    return standingView(loaded, audience, await this.differsFromSigned(loaded));
  }

  @ResolveField(() => Json, {
    nullable: true,
    description:
      'The combined event as a sheet (`sectorline-combined/1`), as it stands, guests left out. What is to come is null there. Where some times were taken by hand, they are written as the electronic ones that the tables score alike. Nothing for the throws pentathlon, which the format does not have.',
  })
  async sheet(@Parent() { row }: CombinedEvent, @Context() context: RequestContext): Promise<unknown> {
    const loaded = await this.loaded(row, context);
    const isOfCrew = isCrew(context.identity, loaded);
    return combinedSheet(loaded, ({ name, displayName, entrant }) => {
      if (isOfCrew) return name;
      // Where only the bib is shown there is no name to give.
      return displayName === `#${entrant.bib}` ? null : displayName;
    });
  }

  @ResolveField(() => Json, { description: 'What it counts to (`sectorline-result/1`), as it stands.' })
  async result(@Parent() { row }: CombinedEvent, @Context() context: RequestContext): Promise<unknown> {
    return combinedResult(await this.loaded(row, context));
  }

  @ResolveField(() => CombinedJournalEntryConnection, {
    nullable: true,
    description: 'Every entry in the order of recording. Only for those who work at the combined event.',
  })
  async journal(
    @Parent() { row }: CombinedEvent,
    @Args() page: PageArgs,
    @Context() context: RequestContext,
  ) {
    requireCrew(context.identity, await this.loaded(row, context));
    return connectionOf(
      page,
      () => this.database.read((at) => combinedJournal.page(at, row.organisationId, row.id, page)),
      entryObject,
    );
  }

  @ResolveField(() => [CombinedOpenQuestion], {
    nullable: true,
    description: 'What waits for the referee. Only for those who work at the combined event.',
  })
  async questions(
    @Parent() { row }: CombinedEvent,
    @Context() context: RequestContext,
  ): Promise<CombinedOpenQuestion[]> {
    const loaded = await this.loaded(row, context);
    requireCrew(context.identity, loaded);
    const bodies = new Map(loaded.state.journal.map(({ entry }) => [entry.id, entry]));
    return loaded.state.questions.map(({ entry, hold }) => ({
      entry,
      holdCode: hold,
      body: bodies.get(entry),
    }));
  }

  private async loaded(row: Row, context: RequestContext): Promise<LoadedCombined> {
    const loaded = await this.loader(context).load(row);
    for (const linked of loaded.linked.values())
      if (isKeptBack(linked.row, context.identity)) throw forbidden('The results are withheld for now.');
    return loaded;
  }

  /** Whether a signed result and what it is counted from have parted since. */
  private async differsFromSigned(loaded: LoadedCombined): Promise<boolean> {
    if (!loaded.state.signedOff) return false;
    const { organisationId, id } = loaded.row;
    const signed = await this.database.read((at) => combinedOfficialResults.latest(at, organisationId, id));
    return !isDeepStrictEqual(signed?.result, JSON.parse(JSON.stringify(combinedResult(loaded))));
  }
}

function componentsOf({ state, linked, problems }: LoadedCombined): CombinedComponent[] {
  const { table } = state.setup;
  const windy = windEventsOf(table);
  return table.events.map((event, index) => {
    const competition = linked.get(event);
    return {
      event,
      position: index + 1,
      source: competition ? 'linked' : 'entered',
      competition: competition ? competitionObject(competition.row) : null,
      progress: componentProgress(state, event).toUpperCase().replace(' ', '_'),
      hasWind: windy.includes(event),
      problems: [...(problems.get(event) ?? [])],
    };
  });
}

function requireCrew(viewer: Identity, loaded: LoadedCombined): void {
  if (isCrew(viewer, loaded)) return;
  const message = 'Only those who work at this combined event may read this.';
  throw viewer.isPublic ? unauthenticated(message) : forbidden(message);
}

function entryObject(row: CombinedEntryRow): CombinedJournalEntry {
  return {
    id: row.entryId,
    sequence: row.sequence,
    kind: row.kind,
    body: row.body,
    standing: row.standing,
    holdCode: row.verdict.standing === 'held' ? row.verdict.hold.code : null,
    authority: row.authority,
    actor: row.actor,
    device: row.device,
    deviceAt: row.deviceAt === null ? null : new Date(row.deviceAt),
    recordedAt: new Date(row.recordedAt),
  };
}
