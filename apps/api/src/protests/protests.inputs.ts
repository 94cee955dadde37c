import { Field, ID, InputType } from '@nestjs/graphql';
import { IsOptional } from 'class-validator';
import { PROTEST_GROUNDS, type ProtestGround, type ProtestOutcome } from '#rules';
import { ExpectedVersion, Reason } from '../platform/inputs/entry-fields.js';
import { enumOf } from '../platform/inputs/enums.js';
import { JournalInput } from '../platform/inputs/journal-input.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';

export const ProtestFormEnum = enumOf<'oral' | 'written'>(
  'ProtestForm',
  ['oral', 'written'],
  'How a protest was made.',
);
export const ProtestGroundEnum = enumOf<ProtestGround>(
  'ProtestGround',
  PROTEST_GROUNDS,
  'What a protest is about: RULES that were misapplied, CLERICAL errors, the ELIGIBILITY of somebody, or a JUDGEMENT.',
);
export const ProtestOutcomeEnum = enumOf<ProtestOutcome>(
  'ProtestOutcome',
  ['upheld', 'dismissed'],
  'What was decided.',
);
export const DepositEndEnum = enumOf<'returned' | 'forfeited'>(
  'DepositEnd',
  ['returned', 'forfeited'],
  'What becomes of a deposit.',
);

/** What everything brings along that is done about a result. */
@InputType({ isAbstract: true })
abstract class ProceedingInput extends JournalInput {
  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;
}

@InputType({ description: 'The result is announced: it hangs, or was read out.' })
export class ResultPostInput extends ProceedingInput {
  @Field(() => Instant, { nullable: true, description: 'When; left out: now.' })
  @IsOptional()
  postedAt?: Date | null;

  @Field(() => String, { nullable: true, description: 'Where it hangs.' })
  @IsOptional()
  @Text(1, 200)
  place?: string | null;

  @Field(() => String, { nullable: true, description: 'Why trials are outstanding, when some are.' })
  @IsOptional()
  @Text(1, 500)
  incomplete?: string | null;

  @ExpectedVersion('The version whose table was posted.')
  expectedVersion: number;
}

@InputType({ description: 'A protest as it came in. One that is late is kept, and said to be late.' })
export class ProtestLodgeInput extends ProceedingInput {
  @Field(() => ProtestFormEnum)
  form: 'oral' | 'written';

  @Field(() => ProtestGroundEnum)
  ground: ProtestGround;

  @Field({ description: 'Who protests: the competitor, or whoever acts for one; a post and a club will do.' })
  @Text(1, 200)
  lodgedBy: string;

  @Field(() => Instant, { nullable: true, description: 'When it was made; left out: now.' })
  @IsOptional()
  lodgedAt?: Date | null;

  @Field(() => ID, { nullable: true, description: 'For whom, where it is for somebody.' })
  @IsOptional()
  @ObjectId('Competitor')
  competitorId?: string | null;

  @Field(() => Uuid, {
    nullable: true,
    description: 'The entry of the trial it is about; left out: the result as a whole.',
  })
  @IsOptional()
  trialId?: string | null;

  @Reason()
  reason: string;

  @Field(() => String, { nullable: true, description: 'What is lodged with it, such as "50 EUR".' })
  @IsOptional()
  @Text(1, 100)
  deposit?: string | null;

  @Field({ defaultValue: false })
  isDepositPaid: boolean;
}

@InputType({ isAbstract: true })
abstract class ProtestStepInput extends ProceedingInput {
  @Field(() => Uuid)
  protestId: string;

  @Field({ description: 'Who: a post will do, such as "referee of throws" or "jury of appeal".' })
  @Text(1, 200)
  by: string;

  @Field(() => Instant, { nullable: true, description: 'When it was said; left out: now.' })
  @IsOptional()
  at?: Date | null;

  @Reason()
  reason: string;
}

@InputType({ description: 'The referee’s decision; after an appeal that of the jury of appeal.' })
export class ProtestDecideInput extends ProtestStepInput {
  @Field(() => ProtestOutcomeEnum)
  outcome: ProtestOutcome;

  @Field(() => String, { nullable: true, description: 'By which rule.' })
  @IsOptional()
  @Text(1, 200)
  rule?: string | null;

  @Field(() => DepositEndEnum, { nullable: true })
  @IsOptional()
  deposit?: 'returned' | 'forfeited' | null;
}

@InputType({ description: 'What the referee decided goes to the jury of appeal.' })
export class ProtestAppealInput extends ProtestStepInput {
  @Field({ defaultValue: false })
  isDepositPaid: boolean;
}

@InputType({ description: 'Whoever protested, or appealed, takes it back.' })
export class ProtestWithdrawInput extends ProtestStepInput {
  @Field(() => DepositEndEnum, { nullable: true })
  @IsOptional()
  deposit?: 'returned' | 'forfeited' | null;
}
