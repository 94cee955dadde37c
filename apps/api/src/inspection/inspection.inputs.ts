import type { InspectionRow } from '#persistence';
import type { Dimension } from '#rules';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  IsBoolean,
  IsInt,
  IsOptional,
  IsString,
  Max,
  Min,
  ValidateNested,
} from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { DimensionEnum, RecheckCauseEnum } from './inspection.types.js';

@InputType()
export class DimensionInput {
  @Field(() => DimensionEnum)
  what: Dimension;

  @Field(() => Int, { description: 'Whole millimetres.' })
  @IsInt()
  @Min(1)
  @Max(99_999)
  mm: number;
}

/** What was weighed and measured, and of what. */
@InputType({ isAbstract: true })
export abstract class LookInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => Uuid)
  @IsString()
  implementId: string;

  @Field(() => Int, {
    nullable: true,
    description: 'As the scale shows it, in whole grams; absent: not weighed.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(99_999)
  grams?: number | null;

  @Field(() => [DimensionInput], { defaultValue: [], description: 'What was measured, each once.' })
  @ArrayMaxSize(5)
  @ValidateNested({ each: true })
  @Type(() => DimensionInput)
  dimensions: DimensionInput[];

  @Field({ defaultValue: false, description: 'The officials keep the implement.' })
  @IsBoolean()
  isKeptBack: boolean;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 500)
  note?: string | null;

  @Field(() => Uuid, {
    nullable: true,
    description: 'The look at the same implement that this one corrects.',
  })
  @IsOptional()
  @IsString()
  replacesId?: string | null;

  @Field(() => String, { nullable: true, description: 'Why it is corrected; with `replacesId`.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;

  @Field(() => String, { nullable: true, description: 'What the device is called, for the log.' })
  @IsOptional()
  @Text(1, 100)
  device?: string | null;

  @Field(() => Instant, { nullable: true, description: 'When it was looked at, by the clock of the device.' })
  @IsOptional()
  deviceAt?: Date | null;
}

@InputType({ description: 'What was found of an implement before it is used.' })
export class ImplementInspectInput extends LookInput {
  @Field(() => ID, {
    nullable: true,
    description:
      'Held against what this competition demands; absent: against what the implement is registered as, by the rules of the meet.',
  })
  @IsOptional()
  @ObjectId('Competition')
  competitionId?: string | null;
}

@InputType({
  description:
    'What was found of an implement that is looked at again after it was used, or that it is kept back until then.',
})
export class ImplementRecheckInput extends LookInput {
  @Field(() => RecheckCauseEnum)
  cause: NonNullable<InspectionRow['cause']>;

  @Field(() => Uuid, {
    nullable: true,
    description: 'The attempt after which it is looked at again; needed after a record.',
  })
  @IsOptional()
  @IsString()
  attemptId?: string | null;
}
