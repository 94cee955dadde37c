import type { DrawMethod } from '#rules';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { IsBoolean, IsInt, IsOptional, Max, Min, ValidateNested } from 'class-validator';
import { DrawSeed } from '../platform/inputs/draw-seed.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { DrawMethodEnum } from '../platform/objects/draw.type.js';

const MOST = 2000;

@InputType({ description: 'As few flights as the largest size allows, none smaller than the smallest.' })
export class FlightSizeInput {
  @Field(() => Int)
  @IsInt()
  @Min(1)
  @Max(MOST)
  min: number;

  @Field(() => Int)
  @IsInt()
  @Min(1)
  @Max(MOST)
  max: number;
}

@InputType()
export class StartListDrawInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => Int, { description: 'The version of the competition whose start list is drawn.' })
  @Min(0)
  expectedVersion: number;

  @DrawSeed()
  seed: string;

  @Field(() => DrawMethodEnum, { defaultValue: 'lot' })
  method: DrawMethod;

  @Field(() => Int, {
    nullable: true,
    description: 'How many flights; absent: as the sizes ask. High jump and pole vault have one.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MOST)
  flights?: number | null;

  @Field(() => FlightSizeInput, {
    nullable: true,
    description: 'Sizes of the meet in place of those of the rule set; not together with `flights`.',
  })
  @IsOptional()
  @ValidateNested()
  @Type(() => FlightSizeInput)
  flightSize?: FlightSizeInput | null;

  @Field({
    defaultValue: true,
    description: 'Clubmates are spread over the flights as far as can be; by SEED_MARKS they are not.',
  })
  @IsBoolean()
  areClubmatesApart: boolean;

  @Field(() => String, { nullable: true, description: 'Why it is drawn again; needed after the first draw.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;

  @Field({ defaultValue: false, description: 'Only says what would be drawn: nothing is stored.' })
  @IsBoolean()
  isPreview: boolean;
}
