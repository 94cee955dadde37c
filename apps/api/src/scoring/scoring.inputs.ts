import type { MeetScoringRow, Sex } from '#persistence';
import { MAX_TEAMS, type ScoringPresetCode } from '#rules';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsInt, IsOptional, Length, Matches, Max, Min, ValidateNested } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { SexEnum } from '../platform/objects/words.js';
import { PlacePoints } from './place-points.js';
import { ClubTiesEnum, NonScorersEnum, ScoringPresetEnum } from './scoring.types.js';

const EACH = { each: true };

@InputType({ description: 'The points of the first place, the second, …; places beyond a list give none.' })
export class PlacePointsInput {
  @Field(() => [PlacePoints])
  @ArrayMaxSize(MAX_TEAMS)
  individual: string[];

  @Field(() => [PlacePoints])
  @ArrayMaxSize(MAX_TEAMS)
  relay: string[];
}

@InputType({ description: 'A part of the meet with a club table of its own.' })
export class DivisionInput {
  @Field()
  @Text(1, 80)
  name: string;

  @Field(() => SexEnum, { nullable: true, description: 'Absent: any.' })
  sex?: Sex | null;

  @Field(() => [String], {
    defaultValue: [],
    description: 'Age categories as the competitions name them; empty: any.',
  })
  @ArrayMaxSize(40)
  @Length(1, 40, EACH)
  @Matches(/^(?=.*\S)[^\p{Cc}\u2028\u2029]+$/u, EACH)
  ages: string[];
}

@InputType()
export class MeetScoringSetInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => ScoringPresetEnum, { nullable: true, description: 'Either this or `places`.' })
  preset?: ScoringPresetCode | null;

  @Field(() => PlacePointsInput, { nullable: true, description: 'The meet’s own points.' })
  @IsOptional()
  @ValidateNested()
  @Type(() => PlacePointsInput)
  places?: PlacePointsInput | null;

  @Field(() => Int, {
    nullable: true,
    description: 'How many teams the match has; absent: the clubs that have somebody in it.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MAX_TEAMS)
  teams?: number | null;

  @Field(() => Int, {
    nullable: true,
    description: 'At most so many of a club score in one event; absent: all.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(1000)
  scorersPerClub?: number | null;

  @Field(() => Int, { nullable: true, description: 'The same for relay teams.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(1000)
  relaysPerClub?: number | null;

  @Field(() => NonScorersEnum, { defaultValue: 'out' })
  nonScorers: MeetScoringRow['nonScorers'];

  @Field(() => ClubTiesEnum, { defaultValue: 'places' })
  clubTies: MeetScoringRow['clubTies'];

  @Field(() => [DivisionInput], { defaultValue: [] })
  @ArrayMaxSize(20)
  @ValidateNested(EACH)
  @Type(() => DivisionInput)
  divisions: DivisionInput[];
}
