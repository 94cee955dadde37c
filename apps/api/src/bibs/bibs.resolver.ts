import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { BibsAssignInput } from './bibs.inputs.js';
import { BibsService } from './bibs.service.js';
import { assignedBib, BibsAssignPayload } from './bibs.types.js';

/** Bibs of a whole meet. */
@Resolver()
export class BibsResolver {
  constructor(private readonly bibs: BibsService) {}

  @Mutation(() => BibsAssignPayload, {
    description:
      'Gives everybody of the meet one bib that nobody else wears; where a draw, a trial or a combined event goes by it, it stays. Codes: NOT_FOUND.',
  })
  @Needs('admin', 'director')
  async bibsAssign(
    @Args('input') input: BibsAssignInput,
    @Viewer() viewer: Identity,
  ): Promise<BibsAssignPayload> {
    const done = await this.bibs.assign(input, viewer);
    if ('refusal' in done) return { bibs: [], changedCount: 0, userErrors: [done.refusal] };
    return { bibs: done.bibs.map(assignedBib), changedCount: done.changed, userErrors: [] };
  }
}
