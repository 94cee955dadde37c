import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { forbidden, unauthenticated } from '../platform/errors/api-error.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition } from '../platform/objects/competition.type.js';
import { CompetitorCheckInInput } from './check-in.inputs.js';
import { CheckInService } from './check-in.service.js';
import { CheckInLine, CompetitorCheckInPayload } from './check-in.types.js';

/** Who reported, for those who work at a competition. */
@Resolver(() => Competition)
export class CheckInResolver {
  constructor(private readonly checkIns: CheckInService) {}

  @ResolveField(() => [CheckInLine], {
    nullable: true,
    description:
      'The start list with who reported, what they throw and how it was found. It changes without a new version. Only for officials of the competition, referees and directors.',
  })
  async checkIn(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<CheckInLine[]> {
    if (!viewer.mayDirect(row.meetId) && viewer.capacityIn(row) === null) {
      const message = 'Only those who work at this competition may read this.';
      throw viewer.isPublic ? unauthenticated(message) : forbidden(message);
    }
    return this.checkIns.ofCompetition(row);
  }

  @Mutation(() => CompetitorCheckInPayload, {
    description:
      'Writes down that a competitor has reported, or is not there; the last counts, and all are kept. Codes: NOT_FOUND, ID_REUSED.',
  })
  @Needs('official', 'referee', 'director')
  async competitorCheckIn(
    @Args('input') input: CompetitorCheckInInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorCheckInPayload> {
    const done = await this.checkIns.checkIn(input, viewer);
    if ('refusal' in done) return { line: null, notices: [], isReplay: false, userErrors: [done.refusal] };
    const { line, notices, replayed } = done;
    return { line, notices, isReplay: replayed, userErrors: [] };
  }
}
