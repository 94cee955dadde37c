import type { AthleteRow, NotebookEntryRow } from '#persistence';
import { Args, Context, ID, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { handOf } from './hand.js';
import {
  checklistsOf,
  consentsOf,
  focusesOf,
  notebookAthlete,
  releasesOf,
  stagesOf,
  videosOf,
} from './notebook-view.js';
import { isReleased, NotebookService } from './notebook.service.js';
import {
  AthleteStage,
  Checklist,
  Consent,
  Focus,
  NotebookAthlete,
  NotebookRelease,
  VideoReference,
} from './notebook.types.js';
import { observationObject, PracticeThrow, throwObject, ThrowObservation } from './practice.types.js';
import { shown } from './words-for.js';

/** What is in the notebook, as far as each may read it. */
@Resolver(() => NotebookAthlete)
export class NotebookResolver {
  private readonly entries = loaderPerRequest((rows: readonly AthleteRow[]) => this.service.entries(rows));

  constructor(private readonly service: NotebookService) {}

  @Query(() => [NotebookAthlete], {
    complexity: 10,
    description: 'The athletes whom the viewer coaches, is, or is the guardian of; by name.',
  })
  @Needs('coach', 'athlete', 'guardian')
  async notebookAthletes(@Viewer() viewer: Identity): Promise<NotebookAthlete[]> {
    return (await this.service.athletes(viewer)).map((row) => notebookAthlete(row, viewer));
  }

  @Query(() => NotebookAthlete, {
    nullable: true,
    description: 'For the coaches of the athlete, the athlete and the guardians. Null: not there.',
  })
  @Needs('coach', 'athlete', 'guardian')
  async notebookAthlete(
    @Args('athleteId', { type: () => ID }, new ReadId('Athlete')) athleteId: string,
    @Viewer() viewer: Identity,
  ): Promise<NotebookAthlete | null> {
    const row = await this.service.athlete(athleteId, viewer);
    return row && notebookAthlete(row, viewer);
  }

  @ResolveField(() => [Checklist], { complexity: 4, description: 'For coaches; empty for others.' })
  async checklists(@Parent() of: NotebookAthlete, @Context() context: RequestContext): Promise<Checklist[]> {
    return of.isCoach ? checklistsOf(await this.said(of, context)) : [];
  }

  @ResolveField(() => [AthleteStage], { complexity: 3, description: 'For coaches; empty for others.' })
  async stages(@Parent() of: NotebookAthlete, @Context() context: RequestContext): Promise<AthleteStage[]> {
    return of.isCoach ? stagesOf(await this.said(of, context)) : [];
  }

  @ResolveField(() => [Focus], {
    complexity: 6,
    description: 'For coaches, and for others once FOCUS is released.',
  })
  async focuses(@Parent() of: NotebookAthlete, @Context() context: RequestContext): Promise<Focus[]> {
    const entries = await this.said(of, context);
    return of.isCoach || isReleased(entries, 'focus') ? focusesOf(entries) : [];
  }

  @ResolveField(() => [VideoReference], {
    complexity: 6,
    description: 'For coaches, and for others once NOTES is released.',
  })
  async videos(@Parent() of: NotebookAthlete, @Context() context: RequestContext): Promise<VideoReference[]> {
    const entries = await this.said(of, context);
    return of.isCoach || isReleased(entries, 'notes') ? videosOf(entries) : [];
  }

  @ResolveField(() => [NotebookRelease], { complexity: 4 })
  async releases(
    @Parent() of: NotebookAthlete,
    @Context() context: RequestContext,
  ): Promise<NotebookRelease[]> {
    return releasesOf(await this.said(of, context));
  }

  @ResolveField(() => [Consent], { complexity: 3 })
  async consents(@Parent() of: NotebookAthlete, @Context() context: RequestContext): Promise<Consent[]> {
    return consentsOf(await this.said(of, context));
  }

  @ResolveField(() => [PracticeThrow], {
    complexity: 100,
    description: 'Throws of practice by day and order, both days included. For all who follow the athlete.',
  })
  async practiceThrows(
    @Parent() of: NotebookAthlete,
    @Args('from', { type: () => CalendarDate, nullable: true }) from?: string | null,
    @Args('to', { type: () => CalendarDate, nullable: true }) to?: string | null,
  ): Promise<PracticeThrow[]> {
    const rows = await this.service.throws(of.row);
    return rows.filter(({ onDate }) => (!from || onDate >= from) && (!to || onDate <= to)).map(throwObject);
  }

  @ResolveField(() => [ThrowObservation], {
    complexity: 60,
    description:
      'What was seen of throws of practice and of trials, in the order of observing. For coaches, and for others once NOTES is released.',
  })
  async observations(
    @Parent() of: NotebookAthlete,
    @Context() context: RequestContext,
    @Args('from', { type: () => CalendarDate, nullable: true }) from?: string | null,
    @Args('to', { type: () => CalendarDate, nullable: true }) to?: string | null,
  ): Promise<ThrowObservation[]> {
    if (!of.isCoach && !isReleased(await this.said(of, context), 'notes')) return [];
    const hand = handOf(of.row);
    const rows = await this.service.observations(of.row);
    return rows
      .filter(
        ({ observedAt }) =>
          (!from || observedAt.slice(0, 10) >= from) && (!to || observedAt.slice(0, 10) <= to),
      )
      .map((row) => observationObject(row, (text) => shown(text, hand)));
  }

  private said({ row }: NotebookAthlete, context: RequestContext): Promise<NotebookEntryRow[]> {
    return this.entries(context).load(row);
  }
}
