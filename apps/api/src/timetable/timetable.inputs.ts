import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
  IsInt,
  IsOptional,
  Matches,
  Max,
  Min,
  ValidateNested,
} from 'class-validator';
import type { CrewPost } from '#persistence';
import { enumOf } from '../platform/inputs/enums.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';

const EACH = { each: true };
/** More than a stadium has. */
const MAX_FACILITIES = 60;
const MAX_SLOTS = 500;
const DAY_MINUTES = 24 * 60;
const KEY = /^[a-z0-9][a-z0-9-]{0,39}$/;

export const CrewPostEnum = enumOf<CrewPost>(
  'CrewPost',
  [
    ...(['referee', 'chief-judge', 'judge', 'recorder', 'measurer'] as const),
    ...(['wind', 'safety', 'implements', 'call-room', 'helper'] as const),
  ],
  'What somebody does at a competition.',
);

@InputType({ description: 'A circle, runway, pit or pair of uprights.' })
export class FacilityInput {
  @Field({ description: 'How the timetable names it: small letters, digits, hyphens.' })
  @Matches(KEY)
  key: string;

  @Field({ description: 'As the meet calls it.' })
  @Text(1, 120)
  name: string;
}

@InputType({
  description:
    'Two facilities that cannot be in use at once, e.g. discus and hammer through one cage, or a javelin sector over a pit.',
})
export class SharedGroundInput {
  @Field(() => [String], { description: 'The keys of the two.' })
  @ArrayMinSize(2)
  @ArrayMaxSize(2)
  @Matches(KEY, EACH)
  facilities: string[];

  @Field({ description: 'Why.' })
  @Text(1, 200)
  reason: string;
}

@InputType({ description: 'When and where competitions that are called together take place.' })
export class SlotInput {
  @Field(() => [ID])
  @ArrayMinSize(1)
  @ArrayMaxSize(20)
  @ObjectId('Competition', EACH)
  competitionIds: string[];

  @Field({ description: 'The key of the facility.' })
  @Matches(KEY)
  facility: string;

  @Field(() => Instant)
  startsAt: Date;

  @Field(() => Int, { description: 'How long it is expected to take.' })
  @IsInt()
  @Min(1)
  @Max(DAY_MINUTES)
  minutes: number;

  @Field(() => Int, { defaultValue: 30, description: 'How long before the start the competitors report.' })
  @IsInt()
  @Min(0)
  @Max(240)
  reportMinutes: number;
}

@InputType({ description: 'The whole timetable; it takes the place of the one before, which is kept.' })
export class TimetableSetInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => Int, { description: 'The revision that the change was made to; 0: there is none yet.' })
  @IsInt()
  @Min(0)
  expectedRevision: number;

  @Field(() => [FacilityInput])
  @ArrayMaxSize(MAX_FACILITIES)
  @ValidateNested(EACH)
  @Type(() => FacilityInput)
  facilities: FacilityInput[];

  @Field(() => [SharedGroundInput], { defaultValue: [] })
  @ArrayMaxSize(MAX_FACILITIES)
  @ValidateNested(EACH)
  @Type(() => SharedGroundInput)
  sharedGrounds: SharedGroundInput[];

  @Field(() => [SlotInput])
  @ArrayMaxSize(MAX_SLOTS)
  @ValidateNested(EACH)
  @Type(() => SlotInput)
  slots: SlotInput[];

  @Field(() => String, { nullable: true, description: 'Why it was changed, when it is told.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;
}

@InputType({
  description:
    'One competition starts later, and with it whatever follows on the same or on shared ground. Gaps take up the delay.',
})
export class TimetableDelayInput {
  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => Int, { description: 'The revision that the delay was decided on.' })
  @IsInt()
  @Min(1)
  expectedRevision: number;

  @Field(() => Int)
  @IsInt()
  @Min(1)
  @Max(DAY_MINUTES)
  minutes: number;

  @Field({ description: 'Why, in words for everybody.' })
  @Text(1, 500)
  reason: string;
}

@InputType()
export class CrewMemberInput {
  @Field(() => CrewPostEnum)
  post: CrewPost;

  @Field()
  @Text(1, 120)
  name: string;
}

@InputType({ description: 'Everybody who works at the competition; who was named before is kept.' })
export class CrewSetInput {
  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => [CrewMemberInput])
  @ArrayMaxSize(60)
  @ValidateNested(EACH)
  @Type(() => CrewMemberInput)
  members: CrewMemberInput[];
}
