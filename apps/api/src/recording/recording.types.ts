import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { HOLD_CODES, type HoldCode, type NoticeCode } from '#rules';
import { UserError } from '../platform/errors/user-error.types.js';
import { enumOf } from '../platform/inputs/enums.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { DecisionRequest } from './confirmation.types.js';

export const StandingEnum = enumOf<'accepted' | 'held'>(
  'EntryStanding',
  ['accepted', 'held'],
  'ACCEPTED counts. HELD is stored and stays outside the places until a referee rules, or until what is missing comes in.',
);

@ObjectType({ description: 'A cut already made that an entry would change.' })
export class CutChange {
  @Field(() => Int)
  afterRound: number;

  @Field(() => [ID], { description: 'Competitors who would come in.' })
  wouldBeIn: string[];

  @Field(() => [ID])
  wouldBeOut: string[];
}

@ObjectType({ description: 'Why an entry is held, and what lets it in.' })
export class Hold {
  @Field(() => String, {
    description: `${HOLD_CODES.slice(0, -1).join(', ')} or ${HOLD_CODES.at(-1)}. Accept codes that you do not know.`,
  })
  code: HoldCode;

  @Field()
  message: string;

  @Field(() => String, { nullable: true })
  rule: string | null;

  @Field()
  remedy: string;

  @Field(() => [CutChange])
  cutChanges: CutChange[];
}

@ObjectType({ description: 'An entry of a journal, with what was decided when it came in.' })
export class RecordedEntry {
  @Field(() => Uuid)
  id: string;

  @Field(() => Int, { description: 'Place in the journal, from 1, without gaps.' })
  sequence: number;

  @Field(() => StandingEnum)
  standing: 'accepted' | 'held';

  @Field(() => Hold, { nullable: true })
  hold: Hold | null;

  @Field(() => [String], {
    description:
      'OUT_OF_TURN: somebody else was up. FINER_THAN_MEASURED: measure down. FAR_OUTSIDE: keep the spike in and read again. IMPLEMENT_IN_QUESTION: it is not the competitor’s, or has not passed. At the bar: TRIALS_OUTSTANDING below it, NOT_ANNOUNCED, NOT_THE_RULE_HEIGHT of the jump-off, UPRIGHTS_OUTSIDE_RULE. Accept codes that you do not know.',
  })
  notices: readonly NoticeCode[];

  @Field(() => Instant)
  recordedAt: Date;
}

/** What every mutation of a journal answers. */
@ObjectType({ isAbstract: true })
export abstract class EntryPayload {
  @Field(() => RecordedEntry, { nullable: true, description: 'Nothing when it was refused.' })
  entry: RecordedEntry | null;

  @Field({ description: 'The same entry had been recorded before; this is the answer that it got then.' })
  isReplay: boolean;

  @Field(() => Competition, { nullable: true, description: 'As it stands with the entry.' })
  competition: Competition | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class AttemptRecordPayload extends EntryPayload {}
@ObjectType()
export class AttemptCorrectPayload extends EntryPayload {}
@ObjectType()
export class AttemptWindRecordPayload extends EntryPayload {}
@ObjectType()
export class AttemptsMovePayload extends EntryPayload {}
@ObjectType()
export class AttemptReplacePayload extends EntryPayload {}
@ObjectType()
export class EntryReversePayload extends EntryPayload {}
@ObjectType()
export class EntryRulePayload extends EntryPayload {}
@ObjectType()
export class CompetitorStartSetPayload extends EntryPayload {}
@ObjectType()
export class CompetitorDisqualifyPayload extends EntryPayload {}
@ObjectType()
export class CompetitorReinstatePayload extends EntryPayload {}
@ObjectType()
export class CompetitorAdmitPayload extends EntryPayload {}
@ObjectType()
export class RoundOrderSetPayload extends EntryPayload {}

/** What a decision answers that may need a second person. */
@ObjectType({ isAbstract: true })
export abstract class DecisionPayload extends EntryPayload {
  @Field(() => DecisionRequest, {
    nullable: true,
    description: 'It waits for a second person: see competitionConfirm. Then there is no entry yet.',
  })
  request: DecisionRequest | null;
}

@ObjectType()
export class CompetitionSignOffPayload extends DecisionPayload {}
@ObjectType()
export class CompetitionReopenPayload extends DecisionPayload {}
@ObjectType()
export class CompetitionConfirmPayload extends EntryPayload {}
@ObjectType()
export class CompetitionInterruptPayload extends EntryPayload {}
@ObjectType()
export class CompetitionClearPayload extends EntryPayload {}
@ObjectType()
export class NoteRecordPayload extends EntryPayload {}
@ObjectType()
export class CompetitorExcusePayload extends EntryPayload {}
@ObjectType()
export class CardSignPayload extends EntryPayload {}
@ObjectType()
export class CompetitorAddPayload extends EntryPayload {}
@ObjectType()
export class CompetitorMatchPayload extends EntryPayload {}
@ObjectType()
export class BibsSetPayload extends EntryPayload {}
@ObjectType()
export class CompetitorFlightSetPayload extends EntryPayload {}
@ObjectType()
export class JumpRecordPayload extends EntryPayload {}
@ObjectType()
export class JumpOffRecordPayload extends EntryPayload {}
@ObjectType()
export class JumpCorrectPayload extends EntryPayload {}
@ObjectType()
export class JumpsMovePayload extends EntryPayload {}
@ObjectType()
export class BarSetPayload extends EntryPayload {}
@ObjectType()
export class UprightsSetPayload extends EntryPayload {}
@ObjectType()
export class JumpOffDeclinePayload extends EntryPayload {}
@ObjectType()
export class JumpOrderSetPayload extends EntryPayload {}
