import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { AdmittedBy, SharedBody } from '#rules';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import {
  CompetitorAdmitInput,
  CompetitorDisqualifyInput,
  CompetitorReinstateInput,
  CompetitorStartSetInput,
  EntryRuleInput,
  RoundOrderSetInput,
} from './decision.inputs.js';
import type { EntryInput } from './entry.inputs.js';
import { payloadOf } from './payload.js';
import { RecordingService } from './recording.service.js';
import {
  CompetitorAdmitPayload,
  CompetitorDisqualifyPayload,
  CompetitorReinstatePayload,
  CompetitorStartSetPayload,
  EntryRulePayload,
  RoundOrderSetPayload,
  type EntryPayload,
} from './recording.types.js';
import { requestOf, roundRequest } from './request-of.js';

const LETTERS: Readonly<Record<CompetitorAdmitInput['by'], AdmittedBy>> = {
  referee: 'R',
  jury: 'J',
  draw: 'D',
};

/** What officials, referees and directors decide about competitors and rounds. */
@Resolver()
export class DecisionResolver {
  constructor(private readonly recording: RecordingService) {}

  @Mutation(() => CompetitorStartSetPayload, { description: 'Marks who does not start, or does after all.' })
  @Needs('official', 'referee', 'director')
  competitorStartSet(
    @Args('input') input: CompetitorStartSetInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorStartSetPayload> {
    const { competitorId: competitor, status } = input;
    return this.enter(viewer, input, { kind: 'start', competitor, status });
  }

  @Mutation(() => RoundOrderSetPayload, {
    description:
      'Calls some competitors first in one round, because of a clash with another event. Refused in the last round where the rule set says so (LAST_ROUND_ORDER), held when all who are named have taken their trial of it. For who is absent when called so, record a pass when the time for the trial is over.',
  })
  @Needs('official', 'referee', 'director')
  async roundOrderSet(
    @Args('input') input: RoundOrderSetInput,
    @Viewer() viewer: Identity,
  ): Promise<RoundOrderSetPayload> {
    const { round, competitorIds: competitors, reason } = input;
    const request = roundRequest(input, { kind: 'order', round, competitors, reason });
    return payloadOf(await this.recording.record(viewer, request));
  }

  @Mutation(() => EntryRulePayload, {
    description: 'The referee’s decision on a held entry or a protested trial.',
  })
  @Needs('referee', 'director')
  entryRule(@Args('input') input: EntryRuleInput, @Viewer() viewer: Identity): Promise<EntryRulePayload> {
    const { targetEntryId: entry, decision, reason } = input;
    return this.enter(viewer, input, { kind: 'ruling', entry, decision, reason });
  }

  @Mutation(() => CompetitorDisqualifyPayload, {
    description: 'Disqualifies, with the rule. The trials stay in the journal.',
  })
  @Needs('referee', 'director')
  competitorDisqualify(
    @Args('input') input: CompetitorDisqualifyInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorDisqualifyPayload> {
    const { competitorId: competitor, rule, reason } = input;
    return this.enter(viewer, input, { kind: 'disqualification', competitor, rule, reason });
  }

  @Mutation(() => CompetitorReinstatePayload, { description: 'Ends a disqualification.' })
  @Needs('referee', 'director')
  competitorReinstate(
    @Args('input') input: CompetitorReinstateInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorReinstatePayload> {
    const { competitorId: competitor, reason } = input;
    return this.enter(viewer, input, { kind: 'reinstatement', competitor, reason });
  }

  @Mutation(() => CompetitorAdmitPayload, {
    description: 'Lets a competitor through a cut that the marks did not.',
  })
  @Needs('referee', 'director')
  competitorAdmit(
    @Args('input') input: CompetitorAdmitInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorAdmitPayload> {
    const { competitorId: competitor, afterRound, by, reason } = input;
    const body: SharedBody = {
      kind: 'admission',
      competitor,
      after: afterRound ?? null,
      admittedBy: LETTERS[by],
      reason,
    };
    return this.enter(viewer, input, body);
  }

  private async enter(viewer: Identity, input: EntryInput, body: SharedBody): Promise<EntryPayload> {
    return payloadOf(await this.recording.record(viewer, requestOf(input, body)));
  }
}
