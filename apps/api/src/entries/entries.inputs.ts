import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsBoolean, IsOptional, Max, Min, ValidateNested } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { MarkText } from '../platform/scalars/mark.js';

/** As many as a sheet may hold. */
export const MAX_COMPETITORS = 2000;

@InputType()
export class CompetitorEnterInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => ID, { nullable: true, description: 'An athlete on record; else send `listedName`.' })
  @IsOptional()
  @ObjectId('Athlete')
  athleteId?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'A name as it was written down; else send `athleteId`.',
  })
  @IsOptional()
  @Text(1, 200)
  listedName?: string | null;

  @Field(() => ID, { nullable: true, description: 'Absent: the athlete’s club.' })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'A club as it was written down; not together with `clubId`.',
  })
  @IsOptional()
  @Text(1, 200)
  listedClub?: string | null;

  @Field(() => String, {
    nullable: true,
    description:
      'Unique in the competition. Absent: the one that the athlete has at the meet, or the next number.',
  })
  @IsOptional()
  @Text(1, 64)
  bib?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'Once flights are drawn it has to be one of them: who enters late goes last in it.',
  })
  @IsOptional()
  @Text(1, 64)
  flight?: string | null;

  @Field(() => MarkText, {
    nullable: true,
    description: 'With which mark of the event the competitor is entered, in the unit of the competition.',
  })
  @IsOptional()
  @Text(1, 20)
  seedMark?: string | null;

  @Field({ defaultValue: false, description: 'Competes out of the ranking.' })
  @IsBoolean()
  isGuest: boolean;

  @Field(() => Int, {
    nullable: true,
    description: 'Of the competitor’s own category, where categories compete together.',
  })
  @IsOptional()
  @Min(1)
  @Max(100_000)
  implementGrams?: number | null;

  @Field(() => String, {
    nullable: true,
    description: 'Why so late: once the entries are closed, when only a director enters.',
  })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;
}

@InputType()
export class CompetitorWithdrawInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => String, { nullable: true, description: 'Why; needed once the entries are closed.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;
}

@InputType()
export class StartLineInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => String, { nullable: true, description: 'Absent: as it is; null: none.' })
  @IsOptional()
  @Text(1, 64)
  flight?: string | null;
}

@InputType()
export class StartOrderSetInput {
  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => Int, { description: 'The version of the competition that the order was made from.' })
  @Min(0)
  expectedVersion: number;

  @Field(() => [StartLineInput], { description: 'Everybody of the start list, in the order of competition.' })
  @ArrayMaxSize(MAX_COMPETITORS)
  @ValidateNested({ each: true })
  @Type(() => StartLineInput)
  lines: StartLineInput[];
}
