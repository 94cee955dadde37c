import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { forbidden, unauthenticated } from '../platform/errors/api-error.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { RecordRatifyInput } from './ratification.inputs.js';
import { RatificationService } from './ratification.service.js';
import { decisionObject, RecordDecision, RecordRatifyPayload } from './ratification.types.js';

/** What referees decide about marks as records. */
@Resolver(() => Competition)
export class RatificationResolver {
  constructor(private readonly ratification: RatificationService) {}

  @Mutation(() => RecordRatifyPayload, {
    description:
      'Ratifies a mark as a record, declines it, or takes a decision back; every decision is kept. Codes: NOT_FOUND, NO_SUCH_MARK, NO_SUCH_LIST, MARK_CHANGED, WIND, NOT_THE_BEST, RECHECK, MEASURING, NOTHING_DECIDED, ALREADY_SO, ID_REUSED.',
  })
  @Needs('referee', 'director')
  async recordRatify(
    @Args('input') input: RecordRatifyInput,
    @Viewer() viewer: Identity,
  ): Promise<RecordRatifyPayload> {
    const decided = await this.ratification.decide(input, viewer);
    if ('refusals' in decided) {
      return { decision: null, isReplay: false, competition: null, userErrors: [...decided.refusals] };
    }
    const { row, competition, replayed } = decided;
    return {
      decision: decisionObject(row, competition.unit, !replayed && row.decision !== 'withdrawn'),
      isReplay: replayed,
      competition: competitionObject(competition),
      userErrors: [],
    };
  }

  @ResolveField(() => [RecordDecision], {
    nullable: true,
    description:
      'What was decided about marks as records, in the order of deciding. Only for officials of the competition, referees and directors.',
  })
  async recordDecisions(
    @Parent() { row }: Competition,
    @Viewer() viewer: Identity,
  ): Promise<RecordDecision[]> {
    if (!viewer.mayDirect(row.meetId) && viewer.capacityIn(row) === null) {
      const message = 'Only those who work at this competition may read this.';
      throw viewer.isPublic ? unauthenticated(message) : forbidden(message);
    }
    const decisions = await this.ratification.of(row);
    return decisions.map((one) => decisionObject(one.row, row.unit, one.holds));
  }
}
