import type { Sex } from '#persistence';
import { OPEN_AGE, type EventCode } from '#rules';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { IsBoolean, IsInt, IsOptional, IsString, Max, Min, ValidateNested } from 'class-validator';
import { CsvInput } from '../platform/csv/csv.inputs.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { EventEnum, SexEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';

const MAX_GRAMS = 100_000;
const ANY_LIST = 'At least one of club, meet and athlete.';

@InputType({
  description: 'A mark from before, or from elsewhere, with which lists begin. It counts as it is.',
})
export class StartingMarkAddInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID, { nullable: true, description: `Stands in its records. ${ANY_LIST}` })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;

  @Field(() => ID, { nullable: true, description: 'Stands in its records, and in those of its other years.' })
  @IsOptional()
  @ObjectId('Meet')
  meetId?: string | null;

  @Field(() => ID, { nullable: true, description: 'Who holds it, if on record; stands among the own bests.' })
  @IsOptional()
  @ObjectId('Athlete')
  athleteId?: string | null;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => MarkText)
  mark: string;

  @Field(() => WindText, {
    nullable: true,
    description: 'Outdoors in horizontal jumps, and only there: a reading, or NWI.',
  })
  wind?: string | null;

  @Field({ defaultValue: false })
  @IsBoolean()
  isIndoor: boolean;

  @Field(() => Int, { nullable: true, description: 'Where something is thrown, and only there.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MAX_GRAMS)
  implementGrams?: number | null;

  @Field(() => SexEnum)
  sex: Sex;

  @Field({ defaultValue: OPEN_AGE, description: 'Of the list, such as U18 or 45+; `senior` is open to all.' })
  @Text(1, 40)
  age: string;

  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => String, { nullable: true, description: 'Where it was made.' })
  @IsOptional()
  @Text(1, 200)
  place?: string | null;

  @Field(() => Uuid, { nullable: true, description: 'The starting mark that this one replaces.' })
  @IsOptional()
  @IsString()
  replacesId?: string | null;

  @Field(() => String, { nullable: true, description: 'Why another one is replaced; with `replacesId`.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;
}

@InputType()
export class StartingMarkWithdrawInput {
  @OwnId()
  id?: string | null;

  @Field(() => Uuid, { description: 'The starting mark that is taken back.' })
  @IsString()
  replacesId: string;

  @Field()
  @Text(1, 500)
  reason: string;
}

@InputType({
  description:
    'Columns: event, mark, sex and date; wind, indoor (yes or no), implement_g, age and place where they say something; club by its name; the holder as athlete (the id), or as family_name, given_name and born, which must name one athlete on record. In whatever order.',
})
export class StartingMarksImportInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID, { nullable: true, description: 'All stand in the records of this meet.' })
  @IsOptional()
  @ObjectId('Meet')
  meetId?: string | null;

  @Field(() => ID, { nullable: true, description: 'Those without a club of their own stand in its records.' })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;

  @Field(() => CsvInput)
  @ValidateNested()
  @Type(() => CsvInput)
  csv: CsvInput;

  @Field({ defaultValue: false, description: 'Only says what would be stored, or what is wrong.' })
  @IsBoolean()
  isDryRun: boolean;
}
