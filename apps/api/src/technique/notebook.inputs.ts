import type { ConsentBody, FocusBody, ReleaseBody } from '#persistence';
import type { EventCode } from '#rules';
import type { Instant, Stage, View } from '#technique';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  IsBoolean,
  IsInt,
  IsOptional,
  Matches,
  Max,
  Min,
  ValidateNested,
} from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { FAULT_CODE, TrialRefInput } from './observations.inputs.js';
import {
  ConsentByEnum,
  ConsentPurposeEnum,
  FocusHowEnum,
  InstantEnum,
  ReleaseWhatEnum,
  StageEnum,
  ViewEnum,
} from './words.js';

@InputType({ isAbstract: true })
abstract class OfAthleteInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Athlete')
  athleteId: string;
}

@InputType({
  description:
    '"Today we look at these three". A new version of the same name takes the place of the one before.',
})
export class ChecklistSetInput extends OfAthleteInput {
  @Field(() => EventEnum)
  event: EventCode;

  @Field()
  @Text(1, 64)
  name: string;

  @Field(() => [String], { description: 'Faults to look at; none puts the checklist away.' })
  @ArrayMaxSize(20)
  @Matches(FAULT_CODE, { each: true })
  codes: string[];
}

@InputType({ description: 'How far an athlete is in an event, from a day on.' })
export class StageSetInput extends OfAthleteInput {
  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => StageEnum)
  stage: Stage;

  @Field(() => CalendarDate)
  from: string;
}

@InputType({ description: 'What is worked on from a day on, and how.' })
export class FocusStartInput extends OfAthleteInput {
  @Field(() => EventEnum)
  event: EventCode;

  @Field()
  @Matches(FAULT_CODE)
  code: string;

  @Field(() => FocusHowEnum)
  how: FocusBody['how'];

  @Field(() => String, { nullable: true, description: 'The task or the drill in the coach’s words.' })
  @IsOptional()
  @Text(1, 300)
  what?: string | null;

  @Field(() => CalendarDate)
  from: string;
}

@InputType({ description: 'A focus was worked on until this day.' })
export class FocusEndInput extends OfAthleteInput {
  @Field(() => Uuid)
  focusId: string;

  @Field(() => CalendarDate)
  to: string;
}

@InputType()
export class VideoInstantInput {
  @Field(() => InstantEnum)
  instant: Instant;

  @Field(() => Int, { description: 'Milliseconds from the beginning of the film.' })
  @IsInt()
  @Min(0)
  @Max(86_400_000)
  ms: number;
}

@InputType({ description: 'Where a film of a throw lies. Nothing of it is stored here.' })
export class VideoAddInput extends OfAthleteInput {
  @Field(() => Uuid, { nullable: true, description: 'A throw of practice; or a trial, exactly one of them.' })
  @IsOptional()
  throwId?: string | null;

  @Field(() => TrialRefInput, { nullable: true })
  @IsOptional()
  @ValidateNested()
  @Type(() => TrialRefInput)
  trial?: TrialRefInput | null;

  @Field({ description: 'An address, or the name of a file.' })
  @Text(1, 500)
  address: string;

  @Field(() => ViewEnum, { nullable: true })
  view?: View | null;

  @Field(() => [VideoInstantInput], { defaultValue: [] })
  @ValidateNested({ each: true })
  @Type(() => VideoInstantInput)
  @ArrayMaxSize(20)
  instants: VideoInstantInput[];
}

@InputType({ description: 'Whether a part of the notebook is shown to the athlete and the guardians.' })
export class ReleaseSetInput extends OfAthleteInput {
  @Field(() => ReleaseWhatEnum)
  what: ReleaseBody['what'];

  @Field()
  @IsBoolean()
  isOpen: boolean;
}

@InputType({ description: 'That somebody agreed, or agrees no longer. The form itself stays where it is.' })
export class ConsentRecordInput extends OfAthleteInput {
  @Field(() => ConsentPurposeEnum)
  purpose: ConsentBody['purpose'];

  @Field()
  @IsBoolean()
  isGiven: boolean;

  @Field(() => ConsentByEnum)
  by: ConsentBody['by'];

  @Field({ description: 'Who agreed, as written on the form.' })
  @Text(1, 120)
  name: string;

  @Field(() => CalendarDate)
  on: string;

  @Field(() => String, { nullable: true, description: 'Where the form lies.' })
  @IsOptional()
  @Text(1, 200)
  form?: string | null;
}
