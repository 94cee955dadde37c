import type { CombinedEventCode } from '#rules';
import { Field, ID, InputType } from '@nestjs/graphql';
import { IsOptional } from 'class-validator';
import { enumOf } from '../platform/inputs/enums.js';
import { ExpectedVersion, Reason } from '../platform/inputs/entry-fields.js';
import { JournalInput } from '../platform/inputs/journal-input.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { CombinedEventEnum } from '../platform/objects/combined-words.js';
import { MarkText } from '../platform/scalars/mark.js';
import { RaceTimeText } from '../platform/scalars/race-time.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';

export type RaceOutcome = 'finished' | 'DNS' | 'DNF' | 'DQ';
export const RaceOutcomeEnum = enumOf<RaceOutcome>(
  'CombinedRaceOutcome',
  ['finished', 'DNS', 'DNF', 'DQ'],
  'FINISHED has a time. DNF and DQ are worth nothing and end nothing; who does not start (DNS) is out of the combined event.',
);

export type FieldOutcome = 'valid' | 'NM' | 'DNS' | 'DQ';
export const FieldOutcomeEnum = enumOf<FieldOutcome>(
  'CombinedFieldOutcome',
  ['valid', 'NM', 'DNS', 'DQ'],
  'VALID has a mark. No valid mark (NM) and DQ are worth nothing and end nothing; who does not start (DNS) is out of the combined event.',
);

export type StartStatus = 'started' | 'DNS' | 'DNF';
export const CombinedStartEnum = enumOf<StartStatus>(
  'CombinedStartStatus',
  ['started', 'DNS', 'DNF'],
  'DNS: does not start at all. DNF: gives up. STARTED: is in it after all.',
);

export const CombinedDecisionEnum = enumOf<'count' | 'dismiss'>(
  'CombinedRulingDecision',
  ['count', 'dismiss'],
  'COUNT: the held entry counts, in the place of another result if there is one. DISMISS: it does not.',
);

/** What every entry in the journal of a combined event brings along. */
@InputType({ isAbstract: true })
export abstract class CombinedEntryInput extends JournalInput {
  @Field(() => ID, { description: 'The combined event in whose journal it is entered.' })
  @ObjectId('CombinedEvent')
  combinedEventId: string;
}

/** How a race ended. */
@InputType({ isAbstract: true })
export abstract class TimedInput extends CombinedEntryInput {
  @Field(() => RaceOutcomeEnum)
  outcome: RaceOutcome;

  @Field(() => RaceTimeText, {
    nullable: true,
    description: 'Exactly when finished. With one decimal it was taken by hand.',
  })
  @IsOptional()
  time?: string | null;

  @Field(() => WindText, {
    nullable: true,
    description:
      'Of the heat, up to 200 m and over 100 and 110 m hurdles outdoors. Left out: a reading is to come.',
  })
  @IsOptional()
  wind?: string | null;
}

/** What a field event brought. */
@InputType({ isAbstract: true })
export abstract class MarkedInput extends CombinedEntryInput {
  @Field(() => FieldOutcomeEnum)
  outcome: FieldOutcome;

  @Field(() => MarkText, { nullable: true, description: 'Exactly when valid, in metres.' })
  @IsOptional()
  mark?: string | null;

  @Field(() => WindText, {
    nullable: true,
    description: 'Of the long jump outdoors: of the trial that counts.',
  })
  @IsOptional()
  wind?: string | null;
}

@InputType({ description: 'The time of one entrant in one race.' })
export class CombinedTimeRecordInput extends TimedInput {
  @Field(() => ID)
  @ObjectId('CombinedEntrant')
  entrantId: string;

  @Field(() => CombinedEventEnum)
  event: CombinedEventCode;
}

@InputType({ description: 'What a time really was. A wind that is left out stays as it was.' })
export class CombinedTimeCorrectInput extends TimedInput {
  @Field(() => Uuid, { description: 'The entry id of the time.' })
  targetEntryId: string;

  @Reason()
  reason: string;

  @ExpectedVersion('The version of the combined event that it was decided on.')
  expectedVersion: number;
}

@InputType({
  description: 'The mark of one entrant in a field event that no competition of the meet counts.',
})
export class CombinedMarkRecordInput extends MarkedInput {
  @Field(() => ID)
  @ObjectId('CombinedEntrant')
  entrantId: string;

  @Field(() => CombinedEventEnum)
  event: CombinedEventCode;
}

@InputType({ description: 'What an entered mark really was. A wind that is left out stays as it was.' })
export class CombinedMarkCorrectInput extends MarkedInput {
  @Field(() => Uuid, { description: 'The entry id of the mark.' })
  targetEntryId: string;

  @Reason()
  reason: string;

  @ExpectedVersion('The version of the combined event that it was decided on.')
  expectedVersion: number;
}

@InputType({
  description: 'An entry that should never have been made. It stays in the journal and loses its effect.',
})
export class CombinedEntryReverseInput extends CombinedEntryInput {
  @Field(() => Uuid, { description: 'The id of the entry that is taken back.' })
  targetEntryId: string;

  @Reason()
  reason: string;

  @ExpectedVersion('The version of the combined event that it was decided on.')
  expectedVersion: number;
}

@InputType({ description: 'The decision on a held entry.' })
export class CombinedEntryRuleInput extends CombinedEntryInput {
  @Field(() => Uuid, { description: 'The id of the held entry.' })
  targetEntryId: string;

  @Field(() => CombinedDecisionEnum)
  decision: 'count' | 'dismiss';

  @Reason()
  reason: string;
}

@InputType({ description: 'An entrant does not start, gives up, or is in it after all.' })
export class CombinedStartSetInput extends CombinedEntryInput {
  @Field(() => ID)
  @ObjectId('CombinedEntrant')
  entrantId: string;

  @Field(() => CombinedStartEnum)
  status: StartStatus;

  @Field(() => CombinedEventEnum, {
    nullable: true,
    description: 'With DNF: the first event that is not started.',
  })
  fromEvent?: CombinedEventCode | null;
}

@InputType()
export class CombinedEventSignOffInput extends CombinedEntryInput {
  @Field(() => String, {
    nullable: true,
    description: 'Why results are outstanding (darkness, weather), when some are.',
  })
  @IsOptional()
  @Text(1, 500)
  incomplete?: string | null;

  @ExpectedVersion('The version whose standing was signed.')
  expectedVersion: number;
}

@InputType()
export class CombinedEventReopenInput extends CombinedEntryInput {
  @Reason()
  reason: string;
}
