import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { BarSetInput, JumpOffDeclineInput, JumpOrderSetInput, UprightsSetInput } from './bar.inputs.js';
import { barSetRequest, jumpOrderRequest } from './jump-bodies.js';
import { payloadOf } from './payload.js';
import { RecordingService } from './recording.service.js';
import {
  BarSetPayload,
  JumpOffDeclinePayload,
  JumpOrderSetPayload,
  UprightsSetPayload,
} from './recording.types.js';
import { barRequest } from './request-of.js';

/** What is done about the bar between the trials of a high jump or pole vault. */
@Resolver()
export class BarResolver {
  constructor(private readonly recording: RecordingService) {}

  @Mutation(() => BarSetPayload, {
    description:
      'Sets the bar at a height that was not announced, or leaves heights out. A step that the rules do not allow waits for the referee.',
  })
  @Needs('official', 'referee', 'director')
  async barSet(@Args('input') input: BarSetInput, @Viewer() viewer: Identity): Promise<BarSetPayload> {
    return payloadOf(await this.recording.record(viewer, barSetRequest(input)));
  }

  @Mutation(() => UprightsSetPayload, { description: 'Notes how a vaulter wants the uprights.' })
  @Needs('official', 'referee', 'director')
  async uprightsSet(
    @Args('input') input: UprightsSetInput,
    @Viewer() viewer: Identity,
  ): Promise<UprightsSetPayload> {
    const { competitorId: competitor, behindZeroCm } = input;
    const request = barRequest(input, { kind: 'uprights', competitor, behindZeroCm });
    return payloadOf(await this.recording.record(viewer, request));
  }

  @Mutation(() => JumpOffDeclinePayload, {
    description: 'Those level for first do not jump (on) and share the place.',
  })
  @Needs('official', 'referee', 'director')
  async jumpOffDecline(
    @Args('input') input: JumpOffDeclineInput,
    @Viewer() viewer: Identity,
  ): Promise<JumpOffDeclinePayload> {
    const request = barRequest(input, { kind: 'jump-off-declined', reason: input.reason });
    return payloadOf(await this.recording.record(viewer, request));
  }

  @Mutation(() => JumpOrderSetPayload, {
    description:
      'Calls some competitors first for one trial at one height, because of a clash with another event. For who is absent when called so, record a pass when the time for the trial is over.',
  })
  @Needs('official', 'referee', 'director')
  async jumpOrderSet(
    @Args('input') input: JumpOrderSetInput,
    @Viewer() viewer: Identity,
  ): Promise<JumpOrderSetPayload> {
    return payloadOf(await this.recording.record(viewer, jumpOrderRequest(input)));
  }
}
