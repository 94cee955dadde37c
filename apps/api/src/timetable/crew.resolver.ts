import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition } from '../platform/objects/competition.type.js';
import { CrewService } from './crew.service.js';
import { CrewSetInput } from './timetable.inputs.js';
import { CrewMember, CrewSetPayload } from './timetable.types.js';

@Resolver(() => Competition)
export class CrewResolver {
  constructor(private readonly crews: CrewService) {}

  @ResolveField(() => [CrewMember], {
    nullable: true,
    description: 'Who works at it. Only for those who work at the meet.',
  })
  async crew(
    @Parent() { row }: Competition,
    @Viewer() viewer: Identity,
  ): Promise<readonly CrewMember[] | null> {
    const mayRead = viewer.mayDirect(row.meetId) || viewer.capacityIn(row) !== null;
    return mayRead ? this.crews.of(row) : null;
  }

  @Mutation(() => CrewSetPayload, {
    description: 'Says who works at a competition; their names stand on its card. Codes: NOT_FOUND.',
  })
  @Needs('admin', 'director')
  async crewSet(@Args('input') input: CrewSetInput, @Viewer() viewer: Identity): Promise<CrewSetPayload> {
    const set = await this.crews.set(input, viewer);
    if ('refusal' in set) return { crew: null, userErrors: [set.refusal] };
    return { crew: set.members, userErrors: [] };
  }
}
