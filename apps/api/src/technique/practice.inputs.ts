import type { EventCode } from '#rules';
import type { Style, Variant } from '#technique';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
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
import { Instant } from '../platform/scalars/instant.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';
import { ObservationNoteInput } from './observations.inputs.js';
import { StyleEnum, ThrowOutcomeEnum, VariantEnum } from './words.js';

/** What one device may send at once. */
const AT_ONCE = 200;

@InputType({ description: 'A day at which somebody practises.' })
export class PracticeSessionCreateInput {
  @OwnId()
  id?: string | null;

  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 200)
  place?: string | null;

  @Field(() => String, { nullable: true, description: 'Such as what the session is about.' })
  @IsOptional()
  @Text(1, 500)
  note?: string | null;
}

/** A whole number that may be left out. */
function OptionalInt(min: number, max: number, description: string): PropertyDecorator {
  return (target, key) => {
    Field(() => Int, { nullable: true, description })(target, key);
    IsOptional()(target, key);
    IsInt()(target, key);
    Min(min)(target, key);
    Max(max)(target, key);
  };
}

@InputType({ description: 'How the implement left the hand, as far as it was measured.' })
export class ReleaseInput {
  @OptionalInt(100, 4500, 'Centimetres a second.')
  speedCmS?: number | null;

  @OptionalInt(0, 900, 'Of the path against the ground, in tenths of a degree.')
  angleTenths?: number | null;

  @OptionalInt(0, 300, 'Above the ground, in centimetres.')
  heightCm?: number | null;

  @OptionalInt(-900, 900, 'Of a disc against the ground, in tenths of a degree.')
  attitudeTenths?: number | null;
}

@InputType({ description: 'One throw of practice.' })
export class ThrowLogInput {
  @Field(() => Uuid, {
    description: 'Made by the device and kept before the first send; sending again is always safe.',
  })
  id: string;

  @Field(() => ID)
  @ObjectId('Athlete')
  athleteId: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => VariantEnum)
  variant: Variant;

  @OptionalInt(1, 100_000, 'Mass of the implement in grams; absent for a jump.')
  implementGrams?: number | null;

  @Field(() => Int, { description: 'Order of the athlete’s throws in the session, from 1.' })
  @IsInt()
  @Min(1)
  @Max(999)
  round: number;

  @Field(() => ThrowOutcomeEnum)
  outcome: 'valid' | 'foul';

  @Field(() => MarkText, {
    nullable: true,
    description: 'In metres with two decimals; absent for a foul, and where nobody looked.',
  })
  mark?: string | null;

  @Field({ defaultValue: true, description: 'False: paced or guessed.' })
  @IsBoolean()
  isMeasured: boolean;

  @OptionalInt(1, 100, 'How hard it was meant to be, in per cent, said before the throw.')
  effortPercent?: number | null;

  @Field({ defaultValue: false, description: 'A foul made on purpose, to void a poor throw.' })
  @IsBoolean()
  voidedOnPurpose: boolean;

  @Field(() => String, {
    nullable: true,
    description: 'Why it was a foul, as Competition.foulReasons has it.',
  })
  @IsOptional()
  @Matches(/^[A-Z]{2,16}$/)
  foul?: string | null;

  @Field(() => WindText, { nullable: true })
  wind?: string | null;

  @Field(() => [StyleEnum], { defaultValue: [] })
  @ArrayMaxSize(6)
  styles: Style[];

  @Field(() => ReleaseInput, { nullable: true })
  @IsOptional()
  @ValidateNested()
  @Type(() => ReleaseInput)
  release?: ReleaseInput | null;

  @Field(() => Uuid, {
    nullable: true,
    description:
      'The newest id of the throw that this row corrects. What was seen of the throw stays with it.',
  })
  replacesId?: string | null;

  @Field(() => String, { nullable: true, description: 'Why it is corrected; exactly with replacesId.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;

  @Field({ defaultValue: false, description: 'The throw that is replaced is struck from the record.' })
  @IsBoolean()
  isAnnulled: boolean;

  @Field(() => ObservationNoteInput, { nullable: true, description: 'What was seen of it.' })
  @IsOptional()
  @ValidateNested()
  @Type(() => ObservationNoteInput)
  observation?: ObservationNoteInput | null;
}

@InputType({ description: 'Throws of one session, in the order in which they are to be kept.' })
export class ThrowsLogInput {
  @Field(() => Uuid)
  sessionId: string;

  @Field(() => [ThrowLogInput])
  @ValidateNested({ each: true })
  @Type(() => ThrowLogInput)
  @ArrayMinSize(1)
  @ArrayMaxSize(AT_ONCE)
  throws: ThrowLogInput[];

  @Field(() => String, { nullable: true, description: 'What the device is called, for the record.' })
  @IsOptional()
  @Text(1, 100)
  device?: string | null;

  @Field(() => Instant, { nullable: true, description: 'When it was entered, by the clock of the device.' })
  @IsOptional()
  deviceAt?: Date | null;
}
