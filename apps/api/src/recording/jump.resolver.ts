import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { jumpCorrectionRequest, jumpMoveRequest, jumpOffRequest, jumpRequest } from './jump-bodies.js';
import { JumpCorrectInput, JumpOffRecordInput, JumpRecordInput, JumpsMoveInput } from './jump.inputs.js';
import { payloadOf } from './payload.js';
import { RecordingService } from './recording.service.js';
import {
  JumpCorrectPayload,
  JumpOffRecordPayload,
  JumpRecordPayload,
  JumpsMovePayload,
} from './recording.types.js';

/** Trials of high jump and pole vault. Each method says who may call it and makes one call. */
@Resolver()
export class JumpResolver {
  constructor(private readonly recording: RecordingService) {}

  @Mutation(() => JumpRecordPayload, {
    description:
      'Records one trial of a high jump or pole vault: cleared, failed, passed, retired. Somebody who is not up is recorded all the same. What does not fit is held, never lost.',
  })
  @Needs('official', 'referee', 'director')
  async jumpRecord(
    @Args('input') input: JumpRecordInput,
    @Viewer() viewer: Identity,
  ): Promise<JumpRecordPayload> {
    return payloadOf(await this.recording.record(viewer, jumpRequest(input)));
  }

  @Mutation(() => JumpOffRecordPayload, {
    description:
      'Records one trial of the jump-off for first place. The progress says who is in it and where the bar is.',
  })
  @Needs('official', 'referee', 'director')
  async jumpOffRecord(
    @Args('input') input: JumpOffRecordInput,
    @Viewer() viewer: Identity,
  ): Promise<JumpOffRecordPayload> {
    return payloadOf(await this.recording.record(viewer, jumpOffRequest(input)));
  }

  @Mutation(() => JumpCorrectPayload, {
    description:
      'Says what a trial at the bar really was. By an official after the next competitor has acted it is a request: held until the referee rules.',
  })
  @Needs('official', 'referee', 'director')
  async jumpCorrect(
    @Args('input') input: JumpCorrectInput,
    @Viewer() viewer: Identity,
  ): Promise<JumpCorrectPayload> {
    return payloadOf(await this.recording.record(viewer, jumpCorrectionRequest(input)));
  }

  @Mutation(() => JumpsMovePayload, {
    description: 'Puts trials entered on the wrong line or at the wrong height where they belong.',
  })
  @Needs('official', 'referee', 'director')
  async jumpsMove(
    @Args('input') input: JumpsMoveInput,
    @Viewer() viewer: Identity,
  ): Promise<JumpsMovePayload> {
    return payloadOf(await this.recording.record(viewer, jumpMoveRequest(input)));
  }
}
