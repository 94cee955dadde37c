import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { globalId } from '../platform/inputs/global-id.js';
import { combinedEventObject } from '../platform/objects/combined-event.type.js';
import {
  CombinedComponentLinkInput,
  CombinedEntrantEnterInput,
  CombinedEntrantWithdrawInput,
  CombinedEventCreateInput,
} from './combined-setup.inputs.js';
import { CombinedSetupService, type Changed } from './combined-setup.service.js';
import {
  CombinedComponentLinkPayload,
  CombinedEntrantEnterPayload,
  CombinedEntrantWithdrawPayload,
  CombinedEventCreatePayload,
  type CombinedChangePayload,
} from './combined.types.js';

/** Directors of a meet set its combined events up. */
@Resolver()
export class CombinedSetupResolver {
  constructor(private readonly setup: CombinedSetupService) {}

  @Mutation(() => CombinedEventCreatePayload, {
    description:
      'Sets a combined event up as a draft. Codes: NOT_FOUND, UNKNOWN_EDITION, SCORING_SEX, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async combinedEventCreate(
    @Args('input') input: CombinedEventCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEventCreatePayload> {
    const made = await this.setup.create(input, viewer);
    if ('row' in made)
      return { combinedEvent: combinedEventObject(made.row), isReplay: made.replayed, userErrors: [] };
    const userErrors = 'refusals' in made ? made.refusals : [made.refusal];
    return { combinedEvent: null, isReplay: false, userErrors };
  }

  @Mutation(() => CombinedEntrantEnterPayload, {
    description:
      'Enters somebody in a combined event. Codes: NOT_FOUND, ATHLETE_OR_NAME, ONE_CLUB, SIGNED_OFF, LIST_FULL, BIB_TAKEN, ALREADY_ENTERED, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async combinedEntrantEnter(
    @Args('input') input: CombinedEntrantEnterInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEntrantEnterPayload> {
    const done = await this.setup.enter(input, viewer);
    if ('refusal' in done)
      return { entrantId: null, combinedEvent: null, isReplay: false, userErrors: [done.refusal] };
    return {
      entrantId: globalId('CombinedEntrant', done.entrantId),
      combinedEvent: combinedEventObject(done.row),
      isReplay: done.replayed,
      userErrors: [],
    };
  }

  @Mutation(() => CombinedEntrantWithdrawPayload, {
    description:
      'Takes off an entrant whom the journal does not name. Codes: NOT_FOUND, SIGNED_OFF, IN_JOURNAL.',
  })
  @Needs('admin', 'director')
  async combinedEntrantWithdraw(
    @Args('input') input: CombinedEntrantWithdrawInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEntrantWithdrawPayload> {
    return changed(await this.setup.withdraw(input.entrantId, viewer));
  }

  @Mutation(() => CombinedComponentLinkPayload, {
    description:
      'Says from which competition of the meet a field event is counted. Its competitors are matched by athlete, else by bib; what does not fit is told with the component. Codes: NOT_FOUND, NOT_A_FIELD_EVENT, WRONG_EVENT, WRONG_UNIT, HAS_RESULTS, SIGNED_OFF.',
  })
  @Needs('admin', 'director')
  async combinedComponentLink(
    @Args('input') input: CombinedComponentLinkInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedComponentLinkPayload> {
    return changed(await this.setup.link(input, viewer));
  }
}

function changed(done: Changed): CombinedChangePayload {
  if ('refusal' in done) return { combinedEvent: null, userErrors: [done.refusal] };
  return { combinedEvent: combinedEventObject(done.row), userErrors: [] };
}
