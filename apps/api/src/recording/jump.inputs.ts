import { Field, ID, InputType, Int, registerEnumType } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
  IsBoolean,
  IsInt,
  IsOptional,
  Max,
  Min,
  ValidateNested,
} from 'class-validator';
import { INCIDENT_CODES, type FoulCode, type IncidentCode, type VerticalTrial } from '#rules';
import { enumOf } from '../platform/inputs/enums.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { ExpectedVersion, Reason } from '../platform/inputs/entry-fields.js';
import { EntryInput, FoulReasonEnum } from './entry.inputs.js';

/** Nobody keeps count beyond it: of trials at a height there are three, of rounds of a jump-off a handful. */
export const MAX_TRIAL = 999;

export const JumpOutcomeEnum = {
  CLEARED: 'cleared',
  FAILED: 'failed',
  PASS: 'passed',
  RETIRED: 'retired',
} as const satisfies Record<string, VerticalTrial>;
registerEnumType(JumpOutcomeEnum, {
  name: 'JumpOutcome',
  description:
    'How a trial at the bar ended. A PASS gives up the further trials at the height (where the terms say so, this one only) and does not end a run of failures; RETIRED takes no further trials and keeps what was cleared.',
});

export const JumpIncidentEnum = enumOf<IncidentCode>(
  'JumpIncident',
  INCIDENT_CODES,
  'Something out of the ordinary that decided how a trial was judged. What has to be taken again is entered as the failure that it looked like, then struck with attemptReplace.',
);

/** What was seen at the bar. */
@InputType({ isAbstract: true })
export abstract class JumpJudgementInput extends EntryInput {
  @Field(() => JumpOutcomeEnum)
  outcome: VerticalTrial;

  @Field(() => FoulReasonEnum, {
    nullable: true,
    description: 'Why it was a failure; officials often give none.',
  })
  @IsOptional()
  foul?: FoulCode | null;

  @Field(() => JumpIncidentEnum, { nullable: true })
  @IsOptional()
  incident?: IncidentCode | null;

  @Field({
    defaultValue: false,
    description: 'A failure protested on the spot: a clearance if the referee upholds the protest.',
  })
  @IsBoolean()
  isProtested: boolean;
}

@InputType({
  description:
    'One trial at a height, a pass or the retirement there. A pass may be told before the bar is there.',
})
export class JumpRecordInput extends JumpJudgementInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => MarkText, { description: 'Where the bar stood, in the unit of the competition.' })
  height: string;

  @Field(() => Int, { description: 'The competitor’s first, second or third trial at the height, from 1.' })
  @IsInt()
  @Min(1)
  @Max(MAX_TRIAL)
  trial: number;
}

@InputType({
  description: 'One trial of the jump-off for first place. Who passes or retires gives up the claim.',
})
export class JumpOffRecordInput extends JumpJudgementInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => MarkText, { description: 'Where the bar stood, in the unit of the competition.' })
  height: string;

  @Field(() => Int, { description: 'The round of the jump-off, from 1: one trial each.' })
  @IsInt()
  @Min(1)
  @Max(MAX_TRIAL)
  round: number;
}

@InputType({ description: 'What a trial at the bar really was, as a whole.' })
export class JumpCorrectInput extends JumpJudgementInput {
  @Field(() => Uuid, { description: 'The entry id of the trial.' })
  attemptId: string;

  @Reason()
  reason: string;

  @ExpectedVersion()
  expectedVersion: number;
}

@InputType({ description: 'Where one trial belongs.' })
export class JumpMoveTarget {
  @Field(() => Uuid, { description: 'The entry id of the trial.' })
  attemptId: string;

  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => MarkText)
  height: string;

  @Field(() => Int, { description: 'The trial at the height; in the jump-off its round.' })
  @IsInt()
  @Min(1)
  @Max(MAX_TRIAL)
  trial: number;
}

@InputType({ description: 'Trials entered on the wrong line or in the wrong column, in one entry.' })
export class JumpsMoveInput extends EntryInput {
  @Field(() => [JumpMoveTarget])
  @ValidateNested({ each: true })
  @Type(() => JumpMoveTarget)
  @ArrayMinSize(1)
  @ArrayMaxSize(500)
  moves: JumpMoveTarget[];

  @Reason()
  reason: string;

  @ExpectedVersion()
  expectedVersion: number;
}
