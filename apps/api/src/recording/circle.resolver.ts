import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { SharedBody } from '#rules';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { CardSignInput, CompetitorExcuseInput, NoteRecordInput } from './circle.inputs.js';
import type { EntryInput } from './entry.inputs.js';
import { payloadOf } from './payload.js';
import { RecordingService } from './recording.service.js';
import {
  CardSignPayload,
  CompetitorExcusePayload,
  NoteRecordPayload,
  type EntryPayload,
} from './recording.types.js';
import { requestOf } from './request-of.js';

/** What is written down at the circle beside the trials. */
@Resolver()
export class CircleResolver {
  constructor(private readonly recording: RecordingService) {}

  @Mutation(() => NoteRecordPayload, {
    description:
      'Writes a note into the journal, for those who work at the competition. It changes no result, and is taken also when the result is official.',
  })
  @Needs('official', 'referee', 'director')
  noteRecord(@Args('input') input: NoteRecordInput, @Viewer() viewer: Identity): Promise<NoteRecordPayload> {
    const { about, text, competitorId, seenAt } = input;
    const competitor = competitorId ?? null;
    return this.enter(viewer, input, { kind: 'note', about, text, competitor, seenAt: seenAt.getTime() });
  }

  @Mutation(() => CompetitorExcusePayload, {
    description:
      'Says that a competitor is away at another event: called last in each round until back, but where the rules leave the order of a round alone. The next trial says that the competitor is back, or this mutation without `to`. For who is absent when called, record a pass when the time for the trial is over.',
  })
  @Needs('official', 'referee', 'director')
  competitorExcuse(
    @Args('input') input: CompetitorExcuseInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitorExcusePayload> {
    const { competitorId: competitor, to, until } = input;
    const isAway = to !== null && to !== undefined;
    const back = isAway ? (until?.getTime() ?? null) : null;
    return this.enter(viewer, input, { kind: 'excuse', competitor, to: to ?? null, until: back });
  }

  @Mutation(() => CardSignPayload, {
    description:
      'The chief judge signs the card at the circle. What is entered on it afterwards has to be signed again; the referee signs the result with competitionSignOff.',
  })
  @Needs('official', 'referee', 'director')
  cardSign(@Args('input') input: CardSignInput, @Viewer() viewer: Identity): Promise<CardSignPayload> {
    return this.enter(viewer, input, { kind: 'card-signed', remark: input.remark ?? null });
  }

  private async enter(viewer: Identity, input: EntryInput, body: SharedBody): Promise<EntryPayload> {
    return payloadOf(await this.recording.record(viewer, requestOf(input, body)));
  }
}
