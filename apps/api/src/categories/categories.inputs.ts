import type { AgeDay, EventCode, RuleSetCode } from '#rules';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsOptional, Max, Min, ValidateNested } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { EventEnum, RuleSetEnum, SexEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { AgeDayKindEnum } from './category-words.js';

const MAX_AGE = 150;

@InputType()
export class AgeDayInput {
  @Field(() => AgeDayKindEnum)
  kind: AgeDay['kind'];

  @Field(() => Int, { nullable: true, description: 'With NEXT, and only there.' })
  @IsOptional()
  @Min(1)
  @Max(12)
  month?: number | null;

  @Field(() => Int, { nullable: true, description: 'With NEXT, and only there.' })
  @IsOptional()
  @Min(1)
  @Max(31)
  day?: number | null;
}

@InputType({ description: 'One age category, in completed years, both included.' })
export class AgeBandInput {
  @Field({ description: 'As it stands in a start list beside the sex: U14, 45.' })
  @Text(1, 40)
  code: string;

  @Field(() => Int, { nullable: true, description: 'Absent: without a limit.' })
  @IsOptional()
  @Min(0)
  @Max(MAX_AGE)
  minAge?: number | null;

  @Field(() => Int, { nullable: true, description: 'Absent: without a limit.' })
  @IsOptional()
  @Min(0)
  @Max(MAX_AGE)
  maxAge?: number | null;
}

@InputType()
export class CategoryDefinitionAddInput {
  @OwnId()
  id?: string | null;

  @Field({
    description:
      'What the categories are called. Of several of one name the latest that is in force on a day counts.',
  })
  @Text(1, 64)
  scheme: string;

  @Field(() => RuleSetEnum, {
    nullable: true,
    description: 'They count under this rule set, before its own; absent: only where they are named.',
  })
  rules?: RuleSetCode | null;

  @Field(() => CalendarDate, { nullable: true, description: 'Absent: since ever.' })
  validFrom?: string | null;

  @Field(() => CalendarDate, { nullable: true, description: 'Absent: until further notice.' })
  validUntil?: string | null;

  @Field(() => AgeDayInput)
  @ValidateNested()
  @Type(() => AgeDayInput)
  ageOn: AgeDayInput;

  @Field(() => [AgeBandInput], { description: 'The first that fits counts.' })
  @ArrayMaxSize(60)
  @ValidateNested({ each: true })
  @Type(() => AgeBandInput)
  bands: AgeBandInput[];

  @Field({ description: 'Where they are laid down, such as the statutes of the club and their date.' })
  @Text(1, 200)
  source: string;
}

@InputType()
export class AgeFactorInput {
  @Field(() => SexEnum)
  sex: 'M' | 'W' | 'X';

  @Field({ description: 'An age in years or a category, as the table has it.' })
  @Text(1, 40)
  age: string;

  @Field({ description: 'A decimal such as 1.2345: a mark times the factor is the mark that it stands for.' })
  @Text(1, 20)
  factor: string;
}

@InputType()
export class AgeFactorsSetInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field({ description: 'The publication that the factors are from, and its year.' })
  @Text(1, 200)
  source: string;

  @Field(() => [AgeFactorInput], {
    description: 'All factors of the event; none: there is no list any more.',
  })
  @ArrayMaxSize(400)
  @ValidateNested({ each: true })
  @Type(() => AgeFactorInput)
  factors: AgeFactorInput[];
}
