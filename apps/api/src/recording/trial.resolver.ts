import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { attemptRequest, correctionRequest, moveRequest, windRequest } from './entry-bodies.js';
import { payloadOf } from './payload.js';
import { RecordingService } from './recording.service.js';
import {
  AttemptCorrectPayload,
  AttemptRecordPayload,
  AttemptReplacePayload,
  AttemptsMovePayload,
  AttemptWindRecordPayload,
  EntryReversePayload,
} from './recording.types.js';
import { requestOf } from './request-of.js';
import {
  AttemptCorrectInput,
  AttemptRecordInput,
  AttemptReplaceInput,
  AttemptsMoveInput,
  AttemptWindRecordInput,
  EntryReverseInput,
} from './trial.inputs.js';

/** Trials and what becomes of them afterwards. Each method says who may call it and makes one call. */
@Resolver()
export class TrialResolver {
  constructor(private readonly recording: RecordingService) {}

  @Mutation(() => AttemptRecordPayload, {
    description:
      'Records one trial: a mark, a failure, a pass, a retirement. Somebody who is not up is recorded all the same. What does not fit is held for the referee, never lost.',
  })
  @Needs('official', 'referee', 'director')
  async attemptRecord(
    @Args('input') input: AttemptRecordInput,
    @Viewer() viewer: Identity,
  ): Promise<AttemptRecordPayload> {
    return payloadOf(await this.recording.record(viewer, attemptRequest(input)));
  }

  @Mutation(() => AttemptWindRecordPayload, {
    description: 'Adds the wind of a trial that was recorded without it.',
  })
  @Needs('official', 'referee', 'director')
  async attemptWindRecord(
    @Args('input') input: AttemptWindRecordInput,
    @Viewer() viewer: Identity,
  ): Promise<AttemptWindRecordPayload> {
    return payloadOf(await this.recording.record(viewer, windRequest(input)));
  }

  @Mutation(() => AttemptCorrectPayload, {
    description:
      'Says what a trial really was. By an official after the next competitor has acted it is a request: held until the referee rules.',
  })
  @Needs('official', 'referee', 'director')
  async attemptCorrect(
    @Args('input') input: AttemptCorrectInput,
    @Viewer() viewer: Identity,
  ): Promise<AttemptCorrectPayload> {
    return payloadOf(await this.recording.record(viewer, correctionRequest(input)));
  }

  @Mutation(() => AttemptsMovePayload, {
    description: 'Puts trials entered on the wrong line where they belong.',
  })
  @Needs('official', 'referee', 'director')
  async attemptsMove(
    @Args('input') input: AttemptsMoveInput,
    @Viewer() viewer: Identity,
  ): Promise<AttemptsMovePayload> {
    return payloadOf(await this.recording.record(viewer, moveRequest(input)));
  }

  @Mutation(() => AttemptReplacePayload, {
    description: 'Strikes a trial and grants another in its place; the struck one is kept in the journal.',
  })
  @Needs('official', 'referee', 'director')
  async attemptReplace(
    @Args('input') input: AttemptReplaceInput,
    @Viewer() viewer: Identity,
  ): Promise<AttemptReplacePayload> {
    const { attemptId: attempt, reason } = input;
    const request = requestOf(input, { kind: 'replacement', attempt, reason });
    return payloadOf(await this.recording.record(viewer, request));
  }

  @Mutation(() => EntryReversePayload, {
    description: 'Takes an entry back. An official takes back his own until the next competitor acts.',
  })
  @Needs('official', 'referee', 'director')
  async entryReverse(
    @Args('input') input: EntryReverseInput,
    @Viewer() viewer: Identity,
  ): Promise<EntryReversePayload> {
    const { targetEntryId: entry, reason, expectedVersion = null } = input;
    const request = requestOf(input, { kind: 'reversal', entry, reason }, expectedVersion);
    return payloadOf(await this.recording.record(viewer, request));
  }
}
