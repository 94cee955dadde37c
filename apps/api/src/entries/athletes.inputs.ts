import type { Handedness, NameDisplay, Sex } from '#persistence';
import { Field, ID, InputType } from '@nestjs/graphql';
import { ArrayMaxSize, IsOptional } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { HandednessEnum, NameDisplayEnum, SexEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';

@InputType()
export class ClubCreateInput {
  @OwnId()
  id?: string | null;

  @Field({ description: 'Unique in the organisation.' })
  @Text(1, 200)
  name: string;
}

@InputType()
export class AthleteCreateInput {
  @OwnId()
  id?: string | null;

  @Field()
  @Text(1, 120)
  givenName: string;

  @Field()
  @Text(1, 120)
  familyName: string;

  @Field(() => SexEnum)
  sex: Sex;

  @Field(() => CalendarDate, {
    nullable: true,
    description: 'Never public. Without it the athlete is shown like a child.',
  })
  birthDate?: string | null;

  @Field(() => ID, { nullable: true })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;

  @Field(() => NameDisplayEnum, {
    nullable: true,
    description: 'How the name is shown in public; absent: by age, as the meet decides.',
  })
  display?: NameDisplay | null;

  @Field(() => HandednessEnum, { nullable: true, description: 'Shown at the circle, and never public.' })
  handedness?: Handedness | null;
}

@InputType()
export class AthleteEraseInput {
  @Field(() => ID)
  @ObjectId('Athlete')
  athleteId: string;

  @Field(() => [String], {
    nullable: true,
    description:
      'Names as they were written by hand on lists, where they mean the same person: they are taken off all lists, whole names alone and whatever their case.',
  })
  @IsOptional()
  @ArrayMaxSize(10)
  @Text(1, 200, { each: true })
  alsoListedAs?: string[] | null;
}

@InputType({ description: 'Absent fields stay as they are; null empties those that may be empty.' })
export class AthleteUpdateInput {
  @Field(() => ID)
  @ObjectId('Athlete')
  athleteId: string;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 120)
  givenName?: string | null;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 120)
  familyName?: string | null;

  @Field(() => CalendarDate, { nullable: true })
  birthDate?: string | null;

  @Field(() => ID, { nullable: true })
  @IsOptional()
  @ObjectId('Club')
  clubId?: string | null;

  @Field(() => NameDisplayEnum, { nullable: true })
  display?: NameDisplay | null;

  @Field(() => HandednessEnum, { nullable: true })
  handedness?: Handedness | null;
}
