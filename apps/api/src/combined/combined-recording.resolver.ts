import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { combinedEventObject } from '../platform/objects/combined-event.type.js';
import {
  isRefusal,
  MARK_FIELDS,
  marked,
  requestFor,
  TIME_FIELDS,
  timed,
  type CombinedRequest,
} from './combined-bodies.js';
import {
  CombinedEntryReverseInput,
  CombinedEntryRuleInput,
  CombinedEventReopenInput,
  CombinedEventSignOffInput,
  CombinedMarkCorrectInput,
  CombinedMarkRecordInput,
  CombinedStartSetInput,
  CombinedTimeCorrectInput,
  CombinedTimeRecordInput,
} from './combined-entries.inputs.js';
import { CombinedRecordingService } from './combined-recording.service.js';
import {
  CombinedEntryReversePayload,
  CombinedEntryRulePayload,
  CombinedEventReopenPayload,
  CombinedEventSignOffPayload,
  CombinedMarkCorrectPayload,
  CombinedMarkRecordPayload,
  CombinedStartSetPayload,
  CombinedTimeCorrectPayload,
  CombinedTimeRecordPayload,
  type CombinedEntryPayload,
} from './combined.types.js';

/** Entries in the journals of combined events. Each method says who may call it and makes one call. */
@Resolver()
export class CombinedRecordingResolver {
  constructor(private readonly recording: CombinedRecordingService) {}

  @Mutation(() => CombinedTimeRecordPayload, {
    description:
      'Records the time of a race, or that there is none. What does not fit is held for the referee, never lost. For the referee, a director, and officials of a competition that the combined event is counted from.',
  })
  @Needs('official', 'referee', 'director')
  combinedTimeRecord(
    @Args('input') input: CombinedTimeRecordInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedTimeRecordPayload> {
    const { entrantId: entrant, event } = input;
    const body = { kind: 'result', entrant, event, ...timed(input) } as const;
    return this.enter(viewer, requestFor(input, body, null, TIME_FIELDS));
  }

  @Mutation(() => CombinedTimeCorrectPayload, {
    description:
      'Says what a time really was. By an official after the next event has begun it is a request: held until the referee rules.',
  })
  @Needs('official', 'referee', 'director')
  combinedTimeCorrect(
    @Args('input') input: CombinedTimeCorrectInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedTimeCorrectPayload> {
    const { targetEntryId: entry, reason, expectedVersion } = input;
    const body = { kind: 'correction', entry, reason, ...timed(input) } as const;
    return this.enter(viewer, requestFor(input, body, expectedVersion, TIME_FIELDS));
  }

  @Mutation(() => CombinedMarkRecordPayload, {
    description: 'Records the mark of a field event that is not counted from a competition.',
  })
  @Needs('official', 'referee', 'director')
  combinedMarkRecord(
    @Args('input') input: CombinedMarkRecordInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedMarkRecordPayload> {
    const { entrantId: entrant, event } = input;
    const performance = marked(input);
    const body = isRefusal(performance)
      ? performance
      : ({ kind: 'result', entrant, event, ...performance } as const);
    return this.enter(viewer, requestFor(input, body, null, MARK_FIELDS));
  }

  @Mutation(() => CombinedMarkCorrectPayload, { description: 'Says what an entered mark really was.' })
  @Needs('official', 'referee', 'director')
  combinedMarkCorrect(
    @Args('input') input: CombinedMarkCorrectInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedMarkCorrectPayload> {
    const { targetEntryId: entry, reason, expectedVersion } = input;
    const performance = marked(input);
    const body = isRefusal(performance)
      ? performance
      : ({ kind: 'correction', entry, reason, ...performance } as const);
    return this.enter(viewer, requestFor(input, body, expectedVersion, MARK_FIELDS));
  }

  @Mutation(() => CombinedEntryReversePayload, {
    description: 'Takes an entry back. An official takes back his own until the next event has begun.',
  })
  @Needs('official', 'referee', 'director')
  combinedEntryReverse(
    @Args('input') input: CombinedEntryReverseInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEntryReversePayload> {
    const { targetEntryId: entry, reason, expectedVersion } = input;
    return this.enter(viewer, requestFor(input, { kind: 'reversal', entry, reason }, expectedVersion));
  }

  @Mutation(() => CombinedEntryRulePayload, { description: 'Decides on a held entry.' })
  @Needs('referee', 'director')
  combinedEntryRule(
    @Args('input') input: CombinedEntryRuleInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEntryRulePayload> {
    const { targetEntryId: entry, decision, reason } = input;
    return this.enter(viewer, requestFor(input, { kind: 'ruling', entry, decision, reason }));
  }

  @Mutation(() => CombinedStartSetPayload, {
    description: 'Says that an entrant does not start, gives up, or is in the combined event after all.',
  })
  @Needs('official', 'referee', 'director')
  combinedStartSet(
    @Args('input') input: CombinedStartSetInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedStartSetPayload> {
    const { entrantId: entrant, status, fromEvent } = input;
    return this.enter(viewer, requestFor(input, { kind: 'start', entrant, status, from: fromEvent ?? null }));
  }

  @Mutation(() => CombinedEventSignOffPayload, {
    description:
      'Makes the result official and archives it. Refused while questions are open, and without a reason while results are to come or a competition that it is counted from is not signed off. Where the meet demands two persons, the second one who signs the same version does it. Codes beside those of the journal: SAME_PERSON.',
  })
  @Needs('referee', 'director')
  combinedEventSignOff(
    @Args('input') input: CombinedEventSignOffInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEventSignOffPayload> {
    const body = { kind: 'sign-off', incomplete: input.incomplete ?? null } as const;
    return this.enterDecision(viewer, requestFor(input, body, input.expectedVersion));
  }

  @Mutation(() => CombinedEventReopenPayload, {
    description:
      'Opens an official result again; where the meet demands two persons, two directors. What was archived stays.',
  })
  @Needs('director')
  combinedEventReopen(
    @Args('input') input: CombinedEventReopenInput,
    @Viewer() viewer: Identity,
  ): Promise<CombinedEventReopenPayload> {
    return this.enterDecision(viewer, requestFor(input, { kind: 'reopening', reason: input.reason }));
  }

  private async enterDecision(
    viewer: Identity,
    request: CombinedRequest,
  ): Promise<CombinedEventSignOffPayload> {
    const payload = await this.enter(viewer, request);
    const isWaitingForSecondPerson = payload.entry === null && payload.userErrors.length === 0;
    return { ...payload, isWaitingForSecondPerson };
  }

  private async enter(viewer: Identity, request: CombinedRequest): Promise<CombinedEntryPayload> {
    const outcome = await this.recording.record(viewer, request);
    if ('userError' in outcome)
      return { entry: null, isReplay: false, combinedEvent: null, userErrors: [outcome.userError] };
    const { row } = outcome;
    if ('asked' in outcome)
      return { entry: null, isReplay: false, combinedEvent: combinedEventObject(row), userErrors: [] };
    const { entryId, sequence, verdict, recordedAt, replayed } = outcome;
    return {
      entry: {
        id: entryId,
        sequence,
        standing: verdict.standing.toUpperCase(),
        hold: verdict.standing === 'held' ? verdict.hold : null,
        notices: verdict.standing === 'accepted' ? verdict.notices : [],
        recordedAt: new Date(recordedAt),
      },
      isReplay: replayed,
      combinedEvent: combinedEventObject(row),
      userErrors: [],
    };
  }
}
