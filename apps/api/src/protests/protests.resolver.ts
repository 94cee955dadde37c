import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { PROTEST_GROUNDS, ruleSet, type Citation } from '#rules';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { resultStateIn } from '../platform/competition/proceedings.js';
import { forbidden, unauthenticated } from '../platform/errors/api-error.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { PostingService } from './posting.service.js';
import type { ProceedingOutcome } from './proceedings.service.js';
import {
  ProtestAppealInput,
  ProtestDecideInput,
  ProtestLodgeInput,
  ProtestWithdrawInput,
  ResultPostInput,
} from './protests.inputs.js';
import { ProtestsService } from './protests.service.js';
import {
  DisqualificationRule,
  Protest,
  ProtestAppealPayload,
  ProtestDecidePayload,
  ProtestLodgePayload,
  protestObject,
  ProtestTime,
  ProtestWithdrawPayload,
  ResultPostPayload,
  ResultState,
  resultStateObject,
  type ProtestPayload,
} from './protests.types.js';

/** A result between the field and the archive: posted, protested, decided. */
@Resolver(() => Competition)
export class ProtestsResolver {
  constructor(
    private readonly protestsService: ProtestsService,
    private readonly posting: PostingService,
    private readonly memory: CompetitionMemory,
  ) {}

  @Mutation(() => ResultPostPayload, {
    description:
      'Announces the result as it stands; from then on the time for protests runs. Whatever changes it afterwards makes it an amended one, to be posted anew. Codes: NOT_FOUND, VERSION_CONFLICT, IN_THE_FUTURE, ALREADY_SO, NOT_COMPLETE, ID_REUSED.',
  })
  @Needs('referee', 'director')
  async resultPost(
    @Args('input') input: ResultPostInput,
    @Viewer() viewer: Identity,
  ): Promise<ResultPostPayload> {
    const outcome = await this.posting.post(viewer, input);
    if (!outcome.recorded) return { isReplay: false, competition: null, userErrors: [outcome.userError] };
    const { replayed: isReplay, loaded } = outcome;
    return { isReplay, competition: competitionObject(loaded.row), userErrors: [] };
  }

  @Mutation(() => ProtestLodgePayload, {
    description:
      'Writes a protest down. A late one is kept and said to be late. A failure that was protested at once and measured is entered with its mark in attemptRecord as well. Codes: NOT_FOUND, IN_THE_FUTURE, ID_REUSED.',
  })
  @Needs('official', 'referee', 'director')
  async protestLodge(
    @Args('input') input: ProtestLodgeInput,
    @Viewer() viewer: Identity,
  ): Promise<ProtestLodgePayload> {
    return payloadOf(await this.protestsService.lodge(viewer, input), input.entryId);
  }

  @Mutation(() => ProtestDecidePayload, {
    description:
      'Decides a protest; after an appeal it is the decision of the jury. A trial held under protest is ruled on with it, by an entry of the same id. Codes: NOT_FOUND, NOT_NOW, IN_THE_FUTURE, ID_REUSED, and those of entryRule.',
  })
  @Needs('referee', 'director')
  async protestDecide(
    @Args('input') input: ProtestDecideInput,
    @Viewer() viewer: Identity,
  ): Promise<ProtestDecidePayload> {
    return payloadOf(await this.protestsService.decide(viewer, input), input.protestId);
  }

  @Mutation(() => ProtestAppealPayload, {
    description:
      'Takes the referee’s decision to the jury of appeal. Codes: NOT_FOUND, NOT_NOW, IN_THE_FUTURE, ID_REUSED.',
  })
  @Needs('official', 'referee', 'director')
  async protestAppeal(
    @Args('input') input: ProtestAppealInput,
    @Viewer() viewer: Identity,
  ): Promise<ProtestAppealPayload> {
    return payloadOf(await this.protestsService.appeal(viewer, input), input.protestId);
  }

  @Mutation(() => ProtestWithdrawPayload, {
    description: 'Takes a protest or an appeal back. Codes: NOT_FOUND, NOT_NOW, IN_THE_FUTURE, ID_REUSED.',
  })
  @Needs('official', 'referee', 'director')
  async protestWithdraw(
    @Args('input') input: ProtestWithdrawInput,
    @Viewer() viewer: Identity,
  ): Promise<ProtestWithdrawPayload> {
    return payloadOf(await this.protestsService.withdraw(viewer, input), input.protestId);
  }

  @ResolveField(() => ResultState, {
    description:
      'Running, posted, under protest, official, amended; since when, and until when it may be protested.',
  })
  async resultState(@Parent() { row }: Competition): Promise<ResultState> {
    return resultStateObject(resultStateIn(await this.loaded(row)));
  }

  @ResolveField(() => [Protest], {
    nullable: true,
    description: 'Every protest in the order of writing down. For those who work at the competition.',
  })
  async protests(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<Protest[]> {
    if (!viewer.mayDirect(row.meetId) && viewer.capacityIn(row) === null) {
      const message = 'Only those who work at this competition may read this.';
      throw viewer.isPublic ? unauthenticated(message) : forbidden(message);
    }
    return (await this.loaded(row)).proceedings.protests.map(protestObject);
  }

  @ResolveField(() => [ProtestTime], {
    description: 'How long after its announcement the result may be protested.',
  })
  protestTimes(@Parent() { row }: Competition): ProtestTime[] {
    const { windows } = ruleSet(row.rules, row.edition).protests;
    return PROTEST_GROUNDS.map((ground) => {
      const { value, cite } = windows[ground];
      const minutes = typeof value === 'number' ? value : null;
      return { ground, minutes, isTaken: value !== 'never', ...cited(cite) };
    });
  }

  @ResolveField(() => [DisqualificationRule], {
    description: 'What somebody may be disqualified for. Other rules may be named as well.',
  })
  disqualificationRules(@Parent() { row }: Competition): DisqualificationRule[] {
    const { disqualifications } = ruleSet(row.rules, row.edition);
    return disqualifications.map(({ value: ground, cite }) => ({ ground, ...cited(cite) }));
  }

  private async loaded({ organisationId, id }: Competition['row']): Promise<LoadedCompetition> {
    const loaded = await this.memory.current(organisationId, id);
    if (!loaded) throw new Error(`Competition ${id} went away while it was read.`);
    return loaded;
  }
}

function cited({ rule, basis }: Citation): { readonly rule: string; readonly isConfirmed: boolean } {
  return { rule, isConfirmed: basis === 'read' || basis === 'read in part' };
}

function payloadOf(outcome: ProceedingOutcome, protestId: string): ProtestPayload {
  if (!outcome.recorded)
    return { isReplay: false, competition: null, protest: null, userErrors: [outcome.userError] };
  const { replayed: isReplay, loaded } = outcome;
  const protest = loaded.proceedings.protests.find(({ id }) => id === protestId);
  const competition = competitionObject(loaded.row);
  return { isReplay, competition, protest: protest ? protestObject(protest) : null, userErrors: [] };
}
