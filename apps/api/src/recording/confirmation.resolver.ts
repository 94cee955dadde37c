import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { CompetitionConfirmInput } from './confirmation.inputs.js';
import { ConfirmationService, type Asked } from './confirmation.service.js';
import { DecisionRequest, decisionRequestObject } from './confirmation.types.js';
import { CompetitionReopenInput, CompetitionSignOffInput } from './decision.inputs.js';
import { payloadOf } from './payload.js';
import type { RecordingOutcome } from './recording.service.js';
import {
  CompetitionConfirmPayload,
  CompetitionReopenPayload,
  CompetitionSignOffPayload,
  type DecisionPayload,
} from './recording.types.js';
import { requestOf } from './request-of.js';

/** Makes results official and opens them again, by one person or by two as the meet demands. */
@Resolver(() => Competition)
export class ConfirmationResolver {
  constructor(private readonly service: ConfirmationService) {}

  @Mutation(() => CompetitionSignOffPayload, {
    description:
      'Makes the result official and archives it; where the meet demands a second person, asks for that person, and an official may do so too. Refused while questions are open, and while a protest is (PROTEST_OPEN) or the time for them runs (PROTEST_TIME_RUNS), unless the referee says why not.',
  })
  @Needs('official', 'referee', 'director')
  async competitionSignOff(
    @Args('input') input: CompetitionSignOffInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionSignOffPayload> {
    const { incomplete = null, despite = null } = input;
    const body = { kind: 'sign-off', incomplete, ...(despite !== null && { despite }) } as const;
    const request = requestOf(input, body, input.expectedVersion);
    return answerOf(await this.service.decide(viewer, request, body));
  }

  @Mutation(() => CompetitionReopenPayload, {
    description:
      'Opens an official result again; where the meet demands a second person, asks for that person. What was archived stays.',
  })
  @Needs('director')
  async competitionReopen(
    @Args('input') input: CompetitionReopenInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionReopenPayload> {
    const body = { kind: 'reopening', reason: input.reason } as const;
    return answerOf(await this.service.decide(viewer, requestOf(input, body), body));
  }

  @Mutation(() => CompetitionConfirmPayload, {
    description:
      'The word of a second person, another one than asked. Codes: NOT_FOUND, SAME_PERSON, CHANGED_SINCE, ALREADY_SO, and those of what is confirmed.',
  })
  @Needs('referee', 'director')
  async competitionConfirm(
    @Args('input') input: CompetitionConfirmInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionConfirmPayload> {
    const { requestId, despite = null, competitionId, entryId, device, deviceAt } = input;
    const entry = { competitionId, entryId, device: device ?? null, deviceAt: deviceAt ?? null };
    return payloadOf(
      await this.service.confirm(viewer, { requestId, despite }, { ...entry, expectedVersion: null }),
    );
  }

  @ResolveField(() => [DecisionRequest], {
    description:
      'What was asked of a second person, the newest first. For those who work at the competition.',
  })
  async decisionRequests(
    @Parent() { row }: Competition,
    @Viewer() viewer: Identity,
  ): Promise<DecisionRequest[]> {
    return (await this.service.ofCompetition(row, viewer)).map(decisionRequestObject);
  }
}

function answerOf(outcome: RecordingOutcome | Asked): DecisionPayload {
  if (outcome.recorded !== 'asked') return { ...payloadOf(outcome), request: null };
  const { request, replayed, row } = outcome;
  return {
    entry: null,
    isReplay: replayed,
    competition: competitionObject(row),
    request: decisionRequestObject(request),
    userErrors: [],
  };
}
