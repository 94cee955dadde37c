import type { competitors, Unit } from '#persistence';
import { formatMark } from '#rules';
import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { Competitor, competitorObject } from '../platform/objects/competitor.type.js';
import type { RosterLine } from '../platform/roster/roster.js';
import { CompetitorEnterInput, CompetitorWithdrawInput, StartOrderSetInput } from './entries.inputs.js';
import { EntriesService } from './entries.service.js';
import {
  CallLine,
  CompetitorEnterPayload,
  CompetitorWithdrawPayload,
  StartOrderSetPayload,
} from './entries.types.js';
import { StartListReader } from './start-list.reader.js';

@Resolver(() => Competition)
export class EntriesResolver {
  private readonly rosterLoader = loaderPerRequest((rows: readonly Competition['row'][]) =>
    this.reader.rostersOf(rows),
  );

  constructor(
    private readonly reader: StartListReader,
    private readonly service: EntriesService,
  ) {}

  @ResolveField(() => [Competitor], {
    complexity: 50,
    description: 'In the original order of competition; at most 2,000.',
  })
  async startList(
    @Parent() competition: Competition,
    @Context() context: RequestContext,
  ): Promise<Competitor[]> {
    const roster = await this.rosterLoader(context).load(competition.row);
    return roster.map(competitorObject);
  }

  @ResolveField(() => [CallLine], {
    nullable: true,
    complexity: 50,
    description:
      'The start list with whole names, for the officials, referees and directors of the competition.',
  })
  async callList(
    @Parent() competition: Competition,
    @Context() context: RequestContext,
  ): Promise<CallLine[]> {
    this.reader.requireCaller(competition.row, context.identity);
    const roster = await this.rosterLoader(context).load(competition.row);
    const categories = await this.reader.categoriesOf(competition.row, roster);
    const elsewhere = await this.reader.elsewhereOf(competition.row);
    return roster.map((line, at) => ({
      ...callLine(line, competition.row.unit, elsewhere),
      category: categories[at] ?? null,
    }));
  }

  @Mutation(() => CompetitorEnterPayload, {
    description:
      'Puts a competitor at the end of the start list, before the first trial. A director enters anybody, after the closing time with a reason; a coach enters the athletes that are coached, until the closing time that the meet has set. Once the list is drawn this is a late entry, noted beside the draw. Codes: NOT_FOUND, ATHLETE_OR_NAME, ONE_CLUB, FOR_DIRECTORS, ENTRIES_NOT_OPEN, ENTRIES_CLOSED, LATE_REASON_MISSING, SIGNED_OFF, COMPETITION_STARTED, LIST_FULL, BIB_TAKEN, ALREADY_ENTERED, CLUB_FULL, ATHLETE_FULL, OTHER_SEX, TOO_OLD, TOO_YOUNG, WRONG_UNIT, FLIGHT_MISSING, ID_REUSED.',
  })
  @Needs('admin', 'director', 'coach')
  async competitorEnter(
    @Args('input') input: CompetitorEnterInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorEnterPayload> {
    const done = await this.service.enter(input, viewer);
    if ('refusal' in done)
      return {
        competitor: null,
        competition: null,
        isReplay: false,
        notices: [],
        userErrors: [done.refusal],
      };
    const { competition, line, replayed, notices } = done;
    return {
      competitor: competitorObject(line),
      competition: competitionObject(competition),
      isReplay: replayed,
      notices: [...notices],
      userErrors: [],
    };
  }

  @Mutation(() => CompetitorWithdrawPayload, {
    description:
      'Takes a competitor off the start list, before the first trial, with the rights and times of competitorEnter. Codes: NOT_FOUND, ENTRIES_NOT_OPEN, ENTRIES_CLOSED, LATE_REASON_MISSING, SIGNED_OFF, COMPETITION_STARTED, IN_JOURNAL, CHECKED_IN.',
  })
  @Needs('admin', 'director', 'coach')
  async competitorWithdraw(
    @Args('input') input: CompetitorWithdrawInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorWithdrawPayload> {
    return payload(await this.service.withdraw(input, viewer));
  }

  @Mutation(() => StartOrderSetPayload, {
    description:
      'Sets the order of competition and the flights by hand, before the first trial. Of a drawn list this is noted beside the draw. Codes: NOT_FOUND, SIGNED_OFF, COMPETITION_STARTED, VERSION_CONFLICT, ORDER_INCOMPLETE.',
  })
  @Needs('admin', 'director')
  async startOrderSet(
    @Args('input') input: StartOrderSetInput,
    @Viewer() viewer: Identity,
  ): Promise<StartOrderSetPayload> {
    return payload(await this.service.setOrder(input, viewer));
  }
}

function callLine(
  line: RosterLine,
  unit: Unit,
  elsewhere: readonly competitors.AlsoEntered[],
): Omit<CallLine, 'category'> {
  const { seedMark, athleteId, isUnmatched } = line.competitor;
  const own = elsewhere.filter((one) => athleteId !== null && one.athleteId === athleteId);
  return {
    competitor: competitorObject(line),
    name: line.name,
    seedMark: seedMark === null ? null : formatMark(seedMark, unit),
    handedness: line.athlete?.handedness ?? null,
    isUnmatched,
    alsoEntered: own.map(({ competitionId, title, startsAt }) => ({
      competitionId: globalId('Competition', competitionId),
      title,
      startsAt: startsAt === null ? null : new Date(startsAt),
    })),
  };
}

function payload(done: Awaited<ReturnType<EntriesService['withdraw']>>): StartOrderSetPayload {
  if ('refusal' in done) return { competition: null, userErrors: [done.refusal] };
  return { competition: competitionObject(done.competition), userErrors: [] };
}
