import {
  COMBINED_HOLD_CODES,
  COMBINED_NOTICE_CODES,
  type CombinedEventCode,
  type CombinedHoldCode,
  type CombinedNoticeCode,
} from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { enumOf } from '../platform/inputs/enums.js';
import { CombinedEvent } from '../platform/objects/combined-event.type.js';
import { CombinedEventEnum } from '../platform/objects/combined-words.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({ description: 'Somebody in a combined event, as everybody may see it.' })
export class CombinedEntrant {
  @Field(() => ID)
  id: string;

  @Field()
  bib: string;

  @Field({ description: 'The name, initials or the bib with #: as the club and the meet decide.' })
  displayName: string;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field({ description: 'Competes out of the ranking.' })
  isGuest: boolean;
}

@ObjectType({
  description: 'Something about a linked competition that does not fit. Nothing was refused for it.',
})
export class ComponentProblem {
  @Field({
    description:
      'NOT_IN_COMPETITION, ANOTHER_ATHLETE, NOT_IN_COMBINED_EVENT, UNMEASURED; of the competition A_QUALIFICATION, NOT_THREE_TRIALS, STEP_NOT_CONSTANT. Accept codes that you do not know.',
  })
  code: string;

  @Field()
  message: string;

  @Field()
  remedy: string;

  @Field(() => String, { nullable: true })
  rule: string | null;

  @Field(() => String, { nullable: true, description: 'Whom it is about; null: the competition as a whole.' })
  bib: string | null;
}

export const ComponentSourceEnum = enumOf<'linked' | 'entered'>(
  'ComponentSource',
  ['linked', 'entered'],
  'LINKED: counted from a competition of the meet. ENTERED: from times and marks in the journal of the combined event.',
);

@ObjectType({ description: 'One event of a combined event.' })
export class CombinedComponent {
  @Field(() => CombinedEventEnum)
  event: CombinedEventCode;

  @Field(() => Int, { description: 'Place in the programme, from 1.' })
  position: number;

  @Field(() => ComponentSourceEnum)
  source: 'linked' | 'entered';

  @Field(() => Competition, { nullable: true, description: 'What it is counted from, if it is linked.' })
  competition: Competition | null;

  @Field(() => String, { description: 'TO_COME, RUNNING or COMPLETE.' })
  progress: string;

  @Field({ description: 'Wind is measured, and counts in the mean.' })
  hasWind: boolean;

  @Field(() => [ComponentProblem], { complexity: 5 })
  problems: ComponentProblem[];
}

@ObjectType({ description: 'Why an entry is held, and what lets it in.' })
export class CombinedHold {
  @Field(() => String, {
    description: `${COMBINED_HOLD_CODES.join(', ')}. Accept codes that you do not know.`,
  })
  code: CombinedHoldCode;

  @Field()
  message: string;

  @Field(() => String, { nullable: true })
  rule: string | null;

  @Field()
  remedy: string;
}

@ObjectType({ description: 'An entry of the journal, with what was decided when it came in.' })
export class CombinedRecordedEntry {
  @Field(() => Uuid)
  id: string;

  @Field(() => Int, { description: 'Place in the journal, from 1, without gaps.' })
  sequence: number;

  @Field({ description: 'ACCEPTED counts. HELD is stored and stays outside the points.' })
  standing: string;

  @Field(() => CombinedHold, { nullable: true })
  hold: CombinedHold | null;

  @Field(() => [String], {
    description: `${COMBINED_NOTICE_CODES.join(', ')}. Accept codes that you do not know.`,
  })
  notices: readonly CombinedNoticeCode[];

  @Field(() => Instant)
  recordedAt: Date;
}

/** What every entry into the journal of a combined event answers. */
@ObjectType({ isAbstract: true })
export abstract class CombinedEntryPayload {
  @Field(() => CombinedRecordedEntry, { nullable: true, description: 'Nothing when it was refused.' })
  entry: CombinedRecordedEntry | null;

  @Field({ description: 'The same entry had been recorded before; this is the answer that it got then.' })
  isReplay: boolean;

  @Field(() => CombinedEvent, { nullable: true, description: 'As it stands with the entry.' })
  combinedEvent: CombinedEvent | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CombinedTimeRecordPayload extends CombinedEntryPayload {}
@ObjectType()
export class CombinedTimeCorrectPayload extends CombinedEntryPayload {}
@ObjectType()
export class CombinedMarkRecordPayload extends CombinedEntryPayload {}
@ObjectType()
export class CombinedMarkCorrectPayload extends CombinedEntryPayload {}
@ObjectType()
export class CombinedEntryReversePayload extends CombinedEntryPayload {}
@ObjectType()
export class CombinedEntryRulePayload extends CombinedEntryPayload {}
@ObjectType()
export class CombinedStartSetPayload extends CombinedEntryPayload {}
@ObjectType()
export class CombinedEventSignOffPayload extends CombinedEntryPayload {
  @Field({ description: 'The first of two persons has said it; another one has to say the same.' })
  isWaitingForSecondPerson: boolean;
}
@ObjectType()
export class CombinedEventReopenPayload extends CombinedEventSignOffPayload {}

@ObjectType()
export class CombinedEventCreatePayload {
  @Field(() => CombinedEvent, { nullable: true })
  combinedEvent: CombinedEvent | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CombinedEntrantEnterPayload {
  @Field(() => ID, { nullable: true, description: 'Of the new entrant.' })
  entrantId: string | null;

  @Field(() => CombinedEvent, { nullable: true })
  combinedEvent: CombinedEvent | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

/** What a change of the set-up answers. */
@ObjectType({ isAbstract: true })
export abstract class CombinedChangePayload {
  @Field(() => CombinedEvent, { nullable: true })
  combinedEvent: CombinedEvent | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CombinedEntrantWithdrawPayload extends CombinedChangePayload {}
@ObjectType()
export class CombinedComponentLinkPayload extends CombinedChangePayload {}
