import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { IsInt, IsOptional, IsString, Max, Min } from 'class-validator';
import { FOUL_CODES, type FoulCode, type Outcome } from '#rules';
import { enumOf } from '../platform/inputs/enums.js';
import { JournalInput } from '../platform/inputs/journal-input.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';

export const OutcomeEnum = enumOf<Outcome>(
  'AttemptOutcome',
  ['valid', 'unmeasured', 'foul', 'pass', 'retired'],
  'How a trial ended. VALID has a mark; UNMEASURED is valid behind a minimum-distance line; a PASS uses the trial; RETIRED takes no further trials and keeps what was made.',
);

export const FoulReasonEnum = enumOf<FoulCode>(
  'FoulReason',
  FOUL_CODES,
  'Why a trial was a failure. Which reasons belong to an event is listed with the competition.',
);

export const RulingDecisionEnum = enumOf<'count' | 'dismiss'>(
  'RulingDecision',
  ['count', 'dismiss'],
  'COUNT: a held entry counts, a protested failure becomes valid with the mark that was held. DISMISS: the entry does not count, the failure stands; a trial whose implement did not pass afterwards was a failure.',
);

export const StartStatusEnum = enumOf<'started' | 'DNS'>(
  'StartStatus',
  ['started', 'DNS'],
  'Whether a competitor starts.',
);

/** What every entry of a journal brings along. */
@InputType({ isAbstract: true })
export abstract class EntryInput extends JournalInput {
  @Field(() => ID, { description: 'The competition in whose journal it is entered.' })
  @ObjectId('Competition')
  competitionId: string;
}

/** What was judged and measured. */
@InputType({ isAbstract: true })
export abstract class JudgementInput extends EntryInput {
  @Field(() => OutcomeEnum)
  outcome: Outcome;

  @Field(() => MarkText, {
    nullable: true,
    description: 'Exactly for a valid trial, in the unit of the competition.',
  })
  @IsOptional()
  mark?: string | null;

  @Field(() => WindText, {
    nullable: true,
    description: 'Long and triple jump outdoors only. Left out: a reading is still expected.',
  })
  @IsOptional()
  wind?: string | null;

  @Field(() => FoulReasonEnum, { nullable: true, description: 'Officials often give none.' })
  @IsOptional()
  foul?: FoulCode | null;

  @Field(() => MarkText, {
    nullable: true,
    description:
      'Of a failure protested on the spot: measured all the same and held until the referee rules.',
  })
  @IsOptional()
  protestedMark?: string | null;

  @Field(() => Int, { nullable: true, description: 'Mass of the implement in grams, if it was noted.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(100_000)
  implementGrams?: number | null;

  @Field(() => Uuid, {
    nullable: true,
    description:
      'The implement that was used, as the register has it; its mass comes from there. One that has not passed, or is not the competitor’s, is a question to the referee.',
  })
  @IsOptional()
  @IsString()
  implementId?: string | null;
}
