import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, ArrayMinSize, IsInt, IsOptional, Max, Min, ValidateNested } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';
import { ExpectedVersion, Reason } from '../platform/inputs/entry-fields.js';
import { EntryInput, JudgementInput } from './entry.inputs.js';

@InputType({ description: 'One trial, as it was seen at the circle, the board or the runway.' })
export class AttemptRecordInput extends JudgementInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => Int, { description: 'The round that the device believes it to be, from 1.' })
  @IsInt()
  @Min(1)
  @Max(12)
  round: number;
}

@InputType({
  description:
    'What a trial really was. What is left out of wind and implement stays as it was; another mass by itself is another implement.',
})
export class AttemptCorrectInput extends JudgementInput {
  @Field(() => Uuid, { description: 'The entry id of the trial.' })
  attemptId: string;

  @Reason()
  reason: string;

  @ExpectedVersion()
  expectedVersion: number;
}

@InputType({ description: 'The wind of a trial, read or called later.' })
export class AttemptWindRecordInput extends EntryInput {
  @Field(() => Uuid, { description: 'The entry id of the trial.' })
  attemptId: string;

  @Field(() => WindText)
  wind: string;
}

@InputType({ description: 'Where one trial belongs.' })
export class AttemptMoveTarget {
  @Field(() => Uuid, { description: 'The entry id of the trial.' })
  attemptId: string;

  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => Int)
  @IsInt()
  @Min(1)
  @Max(12)
  round: number;
}

@InputType({ description: 'Trials entered on the wrong line, swapped or shifted in one entry.' })
export class AttemptsMoveInput extends EntryInput {
  @Field(() => [AttemptMoveTarget])
  @ValidateNested({ each: true })
  @Type(() => AttemptMoveTarget)
  @ArrayMinSize(1)
  @ArrayMaxSize(500)
  moves: AttemptMoveTarget[];

  @Reason()
  reason: string;

  @ExpectedVersion()
  expectedVersion: number;
}

@InputType({
  description: 'The competitor was hindered or the trial could not be recorded: it is taken again.',
})
export class AttemptReplaceInput extends EntryInput {
  @Field(() => Uuid, { description: 'The entry id of the trial that is struck and kept.' })
  attemptId: string;

  @Reason()
  reason: string;
}

@InputType({
  description: 'An entry that should never have been made. It stays in the journal and loses its effect.',
})
export class EntryReverseInput extends EntryInput {
  @Field(() => Uuid, { description: 'The id of the entry that is taken back.' })
  targetEntryId: string;

  @Reason()
  reason: string;

  @Field(() => Int, {
    nullable: true,
    description:
      'The version that it was decided on. An official who takes back his last entry may leave it out.',
  })
  @IsOptional()
  @IsInt()
  @Min(0)
  expectedVersion?: number | null;
}
