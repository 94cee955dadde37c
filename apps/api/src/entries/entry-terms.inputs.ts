import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsInt, IsOptional, Max, Min, ValidateNested } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Instant } from '../platform/scalars/instant.js';
import { MAX_COMPETITORS } from './entries.inputs.js';

const MOST_COMPETITIONS = 500;
const MOST_OF_ATHLETE = 100;

@InputType({ description: 'A competition in which a club may have another number.' })
export class CompetitionLimitInput {
  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => Int, { nullable: true, description: 'Absent: as many as it likes.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MAX_COMPETITORS)
  mostPerClub?: number | null;
}

@InputType({
  description: 'All terms anew: what is absent is not limited. They hold for whoever enters from now on.',
})
export class MeetEntryTermsSetInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => Int, { description: 'The revision that was read; 0: there were none.' })
  @IsInt()
  @Min(0)
  @Max(1_000_000)
  expectedRevision: number;

  @Field(() => Instant, {
    nullable: true,
    description:
      'Until then coaches enter the athletes that they coach; from then on only a director, with a reason. Absent: only a director enters.',
  })
  closesAt?: Date | null;

  @Field(() => Int, {
    nullable: true,
    description: 'Competitors of one club in a competition, guests aside.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MAX_COMPETITORS)
  mostPerClub?: number | null;

  @Field(() => Int, {
    nullable: true,
    description:
      'Competitions of one athlete; finals of a qualification and parts of a combined event aside.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MOST_OF_ATHLETE)
  mostPerAthlete?: number | null;

  @Field(() => [CompetitionLimitInput], { defaultValue: [] })
  @ArrayMaxSize(MOST_COMPETITIONS)
  @ValidateNested({ each: true })
  @Type(() => CompetitionLimitInput)
  competitionLimits: CompetitionLimitInput[];
}
