import type { EnteredLine, Sex } from '#persistence';
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
import { CsvInput } from '../platform/csv/csv.inputs.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { SexEnum } from '../platform/objects/words.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';
import { RaceStatusEnum } from './entered-results.types.js';
import { RaceTimeText } from '../platform/scalars/race-time.js';

const MOST_LINES = 200;

@InputType()
export class EnteredLineInput {
  @Field({ description: 'Of the athlete, or what the relay team is called. Never a name.' })
  @Text(1, 64)
  bib: string;

  @Field(() => String, { nullable: true, description: 'As in the start lists; absent: runs for no club.' })
  @IsOptional()
  @Text(1, 200)
  club?: string | null;

  @Field(() => Int, { nullable: true, description: 'Either this or `status`.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MOST_LINES)
  place?: number | null;

  @Field(() => RaceStatusEnum, { nullable: true })
  status?: EnteredLine['status'];

  @Field(() => RaceTimeText, { nullable: true })
  time?: string | null;

  @Field(() => WindText, { nullable: true })
  wind?: string | null;
}

@InputType({
  description:
    'Results of running events and relays as a table. Columns: event, relay (yes or no), sex, age, place, status, bib, club, time, wind; event must be there. Lines of one event, sex and age are one result. A relay team may go by its club.',
})
export class EnteredResultsImportInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => CsvInput)
  @ValidateNested()
  @Type(() => CsvInput)
  csv: CsvInput;

  @Field({ defaultValue: false, description: 'Only says what would be entered, or what is wrong.' })
  @IsBoolean()
  isDryRun: boolean;
}

@InputType()
export class EnteredResultSetInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field({ description: 'Such as "4 x 100 m women".' })
  @Text(1, 200)
  title: string;

  @Field({ defaultValue: false })
  @IsBoolean()
  isRelay: boolean;

  @Field(() => SexEnum, { nullable: true })
  categorySex?: Sex | null;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 40)
  categoryAge?: string | null;

  @Field(() => [EnteredLineInput], { description: 'Best first; none to take a result back.' })
  @ArrayMaxSize(MOST_LINES)
  @ValidateNested({ each: true })
  @Type(() => EnteredLineInput)
  lines: EnteredLineInput[];

  @Field(() => Uuid, { nullable: true, description: 'The entered result that this one replaces.' })
  @IsOptional()
  @IsString()
  replacesId?: string | null;

  @Field(() => String, { nullable: true, description: 'Why another one is replaced; with `replacesId`.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;
}
