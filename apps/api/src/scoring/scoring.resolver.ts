import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Meet } from '../platform/objects/meet.type.js';
import { ClubTableService } from './club-table.service.js';
import { ClubTable } from './club-table.types.js';
import { scoringView } from './club-table-view.js';
import { MeetScoringSetInput } from './scoring.inputs.js';
import { ScoringService } from './scoring.service.js';
import { MeetScoring, MeetScoringSetPayload } from './scoring.types.js';

/** What a meet is worth to its clubs, for everybody who may see the meet. */
@Resolver(() => Meet)
export class ScoringResolver {
  constructor(
    private readonly scorings: ScoringService,
    private readonly tables: ClubTableService,
  ) {}

  @ResolveField(() => MeetScoring, { nullable: true, description: 'Null: the clubs are not scored.' })
  async scoring(@Parent() meet: Meet): Promise<MeetScoring | null> {
    const row = await this.scorings.of(meet.row);
    return row && scoringView(row);
  }

  @ResolveField(() => ClubTable, {
    nullable: true,
    description: 'The clubs as everything stands now. Null: they are not scored.',
  })
  async clubTable(@Parent() meet: Meet): Promise<ClubTable | null> {
    return this.tables.of(meet.row);
  }

  @Mutation(() => MeetScoringSetPayload, {
    description:
      'Says how the clubs are scored from now on. Codes: NOT_FOUND, POINTS_MISSING, POINTS_TWICE, DIVISION_TWICE.',
  })
  @Needs('admin', 'director')
  async meetScoringSet(
    @Args('input') input: MeetScoringSetInput,
    @Viewer() viewer: Identity,
  ): Promise<MeetScoringSetPayload> {
    const set = await this.scorings.set(input, viewer);
    if ('refusals' in set) return { scoring: null, userErrors: set.refusals };
    return { scoring: scoringView(set.row), userErrors: [] };
  }
}
