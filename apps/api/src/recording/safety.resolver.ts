import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import {
  INTERRUPTION_CAUTIONS,
  lightningWait,
  SAFETY_CAUTION,
  safetyChecklist,
  waitsUntil,
  type SafetyState,
} from '#rules';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition } from '../platform/objects/competition.type.js';
import { payloadOf } from './payload.js';
import { RecordingService } from './recording.service.js';
import { CompetitionClearPayload, CompetitionInterruptPayload } from './recording.types.js';
import { requestOf } from './request-of.js';
import { CompetitionClearInput, CompetitionInterruptInput } from './safety.inputs.js';
import { CompetitionSafety } from './safety.types.js';

/** Stopping a competition and letting it go on. */
@Resolver(() => Competition)
export class SafetyResolver {
  constructor(
    private readonly recording: RecordingService,
    private readonly memory: CompetitionMemory,
  ) {}

  @Mutation(() => CompetitionInterruptPayload, {
    description:
      'Stops a competition: nobody is called until the all-clear. A trial that takes place all the same is held.',
  })
  @Needs('official', 'referee', 'director')
  async competitionInterrupt(
    @Args('input') input: CompetitionInterruptInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionInterruptPayload> {
    const { cause, note, seenAt } = input;
    const body = { kind: 'interruption', cause, note: note ?? null, seenAt: seenAt.getTime() } as const;
    return payloadOf(await this.recording.record(viewer, requestOf(input, body)));
  }

  @Mutation(() => CompetitionClearPayload, {
    description:
      'The all-clear: the checklist of the event has been confirmed, before the first warm-up trial or after an interruption.',
  })
  @Needs('official', 'referee', 'director')
  async competitionClear(
    @Args('input') input: CompetitionClearInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionClearPayload> {
    const { confirmed, newWarmUp, clearedAt, despite } = input;
    const body = {
      kind: 'all-clear',
      confirmed,
      newWarmUp,
      clearedAt: clearedAt.getTime(),
      despite: despite ?? null,
    } as const;
    return payloadOf(await this.recording.record(viewer, requestOf(input, body)));
  }

  @ResolveField(() => CompetitionSafety, {
    complexity: 5,
    description: 'The checklist of the event, and what has stopped the competition.',
  })
  async safety(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<CompetitionSafety> {
    const loaded = await this.memory.current(row.organisationId, row.id);
    const state = loaded?.state.safety ?? NOTHING_SAID;
    const until = waitsUntil(state.stops, row.rules);
    return {
      isInterrupted: state.stops.length > 0,
      stops: state.stops.map(({ entry, cause, note, seenAt }) => ({
        entry,
        cause,
        caution: INTERRUPTION_CAUTIONS[cause],
        note: viewer.capacityIn(row) !== null ? note : null,
        seenAt: new Date(seenAt),
      })),
      waitsUntil: until === null ? null : new Date(until),
      waitRule: until === null ? null : lightningWait(row.rules).cite.rule,
      isConfirmed: state.isConfirmed,
      hasNewWarmUp: state.hasNewWarmUp,
      checklist: safetyChecklist(row.event).map(({ code, sentence, source }) => ({
        code,
        sentence,
        source: source.rule,
      })),
      caution: SAFETY_CAUTION,
    };
  }
}

const NOTHING_SAID: SafetyState = { stops: [], isConfirmed: false, hasNewWarmUp: false };
