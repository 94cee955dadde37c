import { parseMark, type EventCode } from '#rules';
import { isTechniqueEvent, type TechniqueEvent } from '#technique';
import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { connectionOf } from '../platform/connections/connection.js';
import { badUserInput } from '../platform/errors/api-error.js';
import { NotebookAthlete } from '../technique/notebook.types.js';
import { AnalysisArgs, HistoryArgs, OutlookArgs } from './analysis.args.js';
import { analysisObject, NotebookAnalysis } from './analysis.types.js';
import { AnalyticsService } from './analytics.service.js';
import { historyThrow, HistoryThrowConnection } from './history.types.js';
import { OpenParts } from './open-parts.js';
import { StandardOutlook } from './outlook.types.js';

/** What the data of an athlete say, for those who may see it. */
@Resolver(() => NotebookAthlete)
export class AnalyticsResolver {
  constructor(
    private readonly analytics: AnalyticsService,
    private readonly parts: OpenParts,
  ) {}

  @ResolveField(() => HistoryThrowConnection, {
    description: 'Trials and throws of practice, the newest first. For all who follow the athlete.',
  })
  async history(
    @Parent() { row }: NotebookAthlete,
    @Args() args: HistoryArgs,
  ): Promise<HistoryThrowConnection> {
    const { event = null, implementGrams = null, from = null, to = null, thrownIn = null } = args;
    const filter = { event, implementGrams, from, to, thrownIn };
    return connectionOf(args, () => this.analytics.page(row, filter, args), historyThrow);
  }

  @ResolveField(() => NotebookAnalysis, {
    nullable: true,
    description:
      'For coaches, and for the athlete and the guardians once ANALYSIS is released: null before. A child is told of progress, and of one thing to try.',
  })
  async analysis(
    @Parent() of: NotebookAthlete,
    @Args() args: AnalysisArgs,
  ): Promise<typeof NotebookAnalysis | null> {
    const { implementGrams = null, from = null, to = null, thrownIn = null } = args;
    const event = techniqueEvent(args.event);
    if (!(await this.parts.mayRead(of, 'analysis'))) return null;
    const filter = { event, implementGrams, from, to, thrownIn };
    return analysisObject(await this.analytics.analysis(of.row, filter), of.isCoach);
  }

  @ResolveField(() => StandardOutlook, {
    nullable: true,
    description:
      'For coaches, and for the athlete and the guardians once ANALYSIS is released. Null for a child: nobody makes forecasts of children.',
  })
  async outlook(@Parent() of: NotebookAthlete, @Args() args: OutlookArgs): Promise<StandardOutlook | null> {
    const event = techniqueEvent(args.event);
    const mark = parseMark(args.standard);
    if (mark?.unit !== 'cm') throw IN_METRES;
    if (of.isChild || !(await this.parts.mayRead(of, 'analysis'))) return null;
    const { implementGrams = null, on, trials } = args;
    const filter = { event, implementGrams, from: null, to: null, thrownIn: null };
    return this.analytics.outlook(of.row, filter, { standardCm: mark.value, on, trials });
  }
}

/** Throws BAD_USER_INPUT for an event without a vocabulary. */
export function techniqueEvent(event: EventCode): TechniqueEvent {
  if (isTechniqueEvent(event)) return event;
  throw badUserInput('There is no vocabulary for this event.', [
    {
      path: ['event'],
      rule: 'techniqueEvent',
      message: 'event has no vocabulary',
      remedy: 'Discus, shot, hammer, javelin, long, triple and high jump have one.',
    },
  ]);
}

const IN_METRES = badUserInput('The standard is not in metres.', [
  {
    path: ['standard'],
    rule: 'markUnit',
    message: 'standard must be in metres',
    remedy: 'Send it with two decimals, like "50.00".',
  },
]);
