import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Meet } from '../platform/objects/meet.type.js';
import { EnteredResultSetInput } from './entered-results.inputs.js';
import { EnteredResultsService } from './entered-results.service.js';
import { EnteredResult, EnteredResultSetPayload } from './entered-results.types.js';
import { enteredView } from './entered-view.js';

/** Results of running events and relays, entered so that a team score is whole. */
@Resolver(() => Meet)
export class EnteredResultsResolver {
  constructor(private readonly results: EnteredResultsService) {}

  @ResolveField(() => [EnteredResult], {
    description: 'Results of running events and relays that count, in the order of entering.',
  })
  async enteredResults(@Parent() meet: Meet): Promise<EnteredResult[]> {
    return (await this.results.of(meet.row)).map(enteredView);
  }

  @Mutation(() => EnteredResultSetPayload, {
    description:
      'Enters the result of a running event or a relay, or one that replaces it; nothing is overwritten. Codes: NOT_FOUND, BIB_TWICE, PLACE_OR_STATUS, PLACES, REASON_MISSING, REASON_NOT_EXPECTED, REPLACED_ALREADY, ID_REUSED.',
  })
  @Needs('director', 'referee')
  async enteredResultSet(
    @Args('input') input: EnteredResultSetInput,
    @Viewer() viewer: Identity,
  ): Promise<EnteredResultSetPayload> {
    const set = await this.results.set(input, viewer);
    if ('row' in set) return { result: enteredView(set.row), isReplay: set.replayed, userErrors: [] };
    const userErrors = 'refusals' in set ? set.refusals : [set.refusal];
    return { result: null, isReplay: false, userErrors };
  }
}
