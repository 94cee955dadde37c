import type { Severity, View } from '#technique';
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
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { MethodEnum, ViewEnum } from './words.js';

/** Of a fault: `DT-04`, or of a club’s own `DT-X04`. */
export const FAULT_CODE = /^[A-Z]{2}-X?\d{2,4}$/;

@InputType({ description: 'What was seen of one fault.' })
export class FaultMarkInput {
  @Field()
  @Matches(FAULT_CODE)
  code: string;

  @Field(() => Int, {
    description: '0 not there, 1 slight, 2 clear, 3 breaks the throw: how far off it was, never how short.',
  })
  @IsInt()
  @Min(0)
  @Max(3)
  severity: Severity;

  @Field({ defaultValue: true })
  @IsBoolean()
  sure: boolean;

  @Field(() => String, {
    nullable: true,
    description: 'Another fault of the same throw that it seemed to come from.',
  })
  @IsOptional()
  @Matches(FAULT_CODE)
  causedBy?: string | null;
}

@InputType({ description: 'The checklist that was looked at: its codes are the scope.' })
export class ScopeOfChecklistInput {
  @Field()
  @Text(1, 64)
  name: string;

  @Field(() => Int)
  @IsInt()
  @Min(1)
  @Max(9999)
  version: number;
}

@InputType({ description: 'What one observer saw of one throw.' })
export class ObservationNoteInput {
  @Field(() => Uuid, {
    description: 'Made by the device and kept before the first send; sending again is always safe.',
  })
  id: string;

  @Field(() => Instant)
  observedAt: Date;

  @Field(() => MethodEnum)
  method: 'live' | 'video';

  @Field({ description: 'Whether the mark was known before this was noted.' })
  @IsBoolean()
  markKnown: boolean;

  @Field(() => ViewEnum, { nullable: true })
  view?: View | null;

  @Field(() => [String], {
    nullable: true,
    description:
      'What was looked for: of these, what is not noted was not there. Null: only what was noticed, so that nothing is known of the rest.',
  })
  @IsOptional()
  @ArrayMaxSize(60)
  @Matches(FAULT_CODE, { each: true })
  scope?: string[] | null;

  @Field(() => ScopeOfChecklistInput, {
    nullable: true,
    description: 'Where the scope is that of a checklist.',
  })
  @IsOptional()
  @ValidateNested()
  @Type(() => ScopeOfChecklistInput)
  checklist?: ScopeOfChecklistInput | null;

  @Field(() => [FaultMarkInput], { defaultValue: [] })
  @ValidateNested({ each: true })
  @Type(() => FaultMarkInput)
  @ArrayMaxSize(60)
  marks: FaultMarkInput[];

  @Field(() => String, { nullable: true, description: 'About the throw, never about the person.' })
  @IsOptional()
  @Text(1, 500)
  note?: string | null;

  @Field(() => Uuid, { nullable: true, description: 'The observation that this one corrects.' })
  @IsOptional()
  replacesId?: string | null;

  @Field(() => String, { nullable: true, description: 'Why it is corrected; exactly with replacesId.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;

  @Field({ defaultValue: false, description: 'The observation that is replaced is taken back.' })
  @IsBoolean()
  isWithdrawn: boolean;
}

@InputType({ description: 'A trial of a competition, by whose and which it is.' })
export class TrialRefInput {
  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => Int)
  @IsInt()
  @Min(1)
  @Max(12)
  round: number;
}

@InputType({
  description: 'What was seen of a throw of practice, or of a trial of a competition: exactly one of them.',
})
export class ObservationLogInput extends ObservationNoteInput {
  @Field(() => Uuid, { nullable: true })
  @IsOptional()
  throwId?: string | null;

  @Field(() => TrialRefInput, { nullable: true })
  @IsOptional()
  @ValidateNested()
  @Type(() => TrialRefInput)
  trial?: TrialRefInput | null;
}

@InputType({ description: 'Observations of one athlete, in the order in which they are to be kept.' })
export class ObservationsLogInput {
  @Field(() => ID)
  @ObjectId('Athlete')
  athleteId: string;

  @Field(() => [ObservationLogInput])
  @ValidateNested({ each: true })
  @Type(() => ObservationLogInput)
  @ArrayMinSize(1)
  @ArrayMaxSize(200)
  observations: ObservationLogInput[];

  @Field(() => String, { nullable: true, description: 'What the device is called, for the record.' })
  @IsOptional()
  @Text(1, 100)
  device?: string | null;

  @Field(() => Instant, { nullable: true, description: 'When it was entered, by the clock of the device.' })
  @IsOptional()
  deviceAt?: Date | null;
}
