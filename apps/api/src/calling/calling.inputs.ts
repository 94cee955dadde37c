import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { ArrayMaxSize, ArrayMinSize, IsOptional, Max, Min } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';

/** More than one circle sees in a day. */
const MAX_COMPETITIONS = 20;
/** As many as all start lists of a group may hold together. */
const MAX_COMPETITORS = 2000;

@InputType()
export class CallingGroupCreateInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field()
  @Text(1, 200)
  title: string;

  @Field(() => String, {
    nullable: true,
    description: 'The circle, runway or pit, as the meet calls it.',
  })
  @IsOptional()
  @Text(1, 120)
  facility?: string | null;

  @Field(() => Instant, { nullable: true })
  startsAt?: Date | null;

  @Field(() => Int, { nullable: true, description: 'How long the place is open for warming up before.' })
  @IsOptional()
  @Min(0)
  @Max(240)
  warmUpMinutes?: number | null;

  @Field(() => [ID], {
    description: 'Competitions of the meet, of one event, in the sequence in which they take turns.',
  })
  @ArrayMinSize(1)
  @ArrayMaxSize(MAX_COMPETITIONS)
  @ObjectId('Competition', { each: true })
  competitionIds: string[];
}

@InputType({ description: 'Absent fields stay as they are; null empties those that may be empty.' })
export class CallingGroupUpdateInput {
  @Field(() => ID)
  @ObjectId('CallingGroup')
  callingGroupId: string;

  @Field(() => Int, { description: 'The version of the group that the change was decided on.' })
  @Min(0)
  expectedVersion: number;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 200)
  title?: string | null;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 120)
  facility?: string | null;

  @Field(() => Instant, { nullable: true })
  startsAt?: Date | null;

  @Field(() => Int, { nullable: true })
  @IsOptional()
  @Min(0)
  @Max(240)
  warmUpMinutes?: number | null;

  @Field(() => [ID], {
    nullable: true,
    description:
      'All competitions of the group in their sequence, before the first trial; none: it is empty.',
  })
  @IsOptional()
  @ArrayMaxSize(MAX_COMPETITIONS)
  @ObjectId('Competition', { each: true })
  competitionIds?: string[] | null;
}

@InputType()
export class CallingOrderSetInput {
  @Field(() => ID)
  @ObjectId('CallingGroup')
  callingGroupId: string;

  @Field(() => Int, { description: 'The version of the group that the order was made for.' })
  @Min(0)
  expectedVersion: number;

  @Field(() => [ID], {
    description:
      'Every competitor of the group once. The order of each competition becomes that of its own competitors in it.',
  })
  @ArrayMaxSize(MAX_COMPETITORS)
  @ObjectId('Competitor', { each: true })
  competitorIds: string[];
}
