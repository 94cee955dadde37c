import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsBoolean, IsInt, IsOptional, Max, Min, ValidateNested } from 'class-validator';
import { CSV_LIMITS } from '../platform/csv/csv-table.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { AthleteChoiceEnum, ClubChoiceEnum } from './table-words.js';
import type { ClubDecision } from './table-clubs.js';
import type { PersonDecision } from './table-persons.js';

/** The line after the last: the header is a line, too. */
const LAST_LINE = 10 * CSV_LIMITS.lines;

@InputType({ description: 'Whether somebody of the table is somebody who is known.' })
export class AthleteDecisionInput {
  @Field(() => Int, { description: 'Of the question.' })
  @IsInt()
  @Min(1)
  @Max(LAST_LINE)
  line: number;

  @Field(() => AthleteChoiceEnum)
  choice: PersonDecision['choice'];

  @Field(() => ID, { nullable: true, description: 'With SAME: one of the candidates on record.' })
  @IsOptional()
  @ObjectId('Athlete')
  athleteId?: string | null;

  @Field(() => Int, { nullable: true, description: 'With SAME: the candidate further up in the table.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(LAST_LINE)
  sameLine?: number | null;
}

@InputType({ description: 'What a club of the table is that is not on record by this name.' })
export class ClubDecisionInput {
  @Field({ description: 'As the table has it.' })
  @Text(1, 200)
  name: string;

  @Field(() => ClubChoiceEnum)
  choice: ClubDecision['choice'];

  @Field(() => ID, { nullable: true, description: 'With SAME: whichever club on record it is.' })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;
}

/** What every table that names athletes and clubs is decided by. */
@InputType({ isAbstract: true })
export abstract class TableDecisionsInput {
  @Field({
    defaultValue: false,
    description: 'Only says what would be stored, what is wrong and what is asked.',
  })
  @IsBoolean()
  isDryRun: boolean;

  @Field(() => String, {
    nullable: true,
    description: 'Of the dry run that was decided about; needed to store anything.',
  })
  @IsOptional()
  @Text(1, 64)
  fingerprint?: string | null;

  @Field(() => [AthleteDecisionInput], { defaultValue: [] })
  @ArrayMaxSize(CSV_LIMITS.lines)
  @ValidateNested({ each: true })
  @Type(() => AthleteDecisionInput)
  athletes: AthleteDecisionInput[];

  @Field(() => [ClubDecisionInput], { defaultValue: [] })
  @ArrayMaxSize(CSV_LIMITS.lines)
  @ValidateNested({ each: true })
  @Type(() => ClubDecisionInput)
  clubs: ClubDecisionInput[];
}
