import type { Sex, Unit } from '#persistence';
import type { EventCode, PlanOverrides, RuleSetCode, Stage } from '#rules';
import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsBoolean, IsInt, IsOptional, Max, Min, ValidateNested } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import {
  CutTiesEnum,
  EventEnum,
  ReorderEnum,
  RuleSetEnum,
  SexEnum,
  StageEnum,
  UnitEnum,
} from '../platform/objects/words.js';
import { Instant } from '../platform/scalars/instant.js';
import { MarkText } from '../platform/scalars/mark.js';
import { VerticalTermsInput } from './vertical-terms.inputs.js';

@InputType()
export class CompetitionWithholdInput {
  @Field(() => ID)
  @ObjectId('Competition')
  competitionId: string;

  @Field({ description: 'True: from now on; false: everybody may see it.' })
  @IsBoolean()
  isWithheld: boolean;

  @Field(() => Instant, { nullable: true, description: 'When it ends by itself; absent: when it is let go.' })
  until?: Date | null;
}

@InputType()
export class CutInput {
  @Field(() => Int)
  @IsInt()
  after: number;

  @Field(() => Int)
  @IsInt()
  through: number;
}

@InputType({
  description:
    'The parts of the rule set’s plan that the meet sets itself; absent keys keep the rule set’s value.',
})
export class PlanInput {
  @Field(() => Int, { nullable: true })
  @IsOptional()
  @IsInt()
  rounds?: number | null;

  @Field(() => [CutInput], { nullable: true, description: 'An empty list: no cut.' })
  @IsOptional()
  @ArrayMaxSize(12)
  @ValidateNested({ each: true })
  @Type(() => CutInput)
  cuts?: CutInput[] | null;

  @Field(() => CutTiesEnum, { nullable: true })
  cutTies?: PlanOverrides['cutTies'] | null;

  @Field(() => [Int], { nullable: true })
  @IsOptional()
  @ArrayMaxSize(12)
  @IsInt({ each: true })
  reorderAfter?: number[] | null;

  @Field(() => ReorderEnum, { nullable: true })
  reorder?: PlanOverrides['reorder'] | null;
}

@InputType()
export class QualifyingInput {
  @Field(() => MarkText)
  @Text(1, 20)
  standard: string;

  @Field(() => Int, { defaultValue: 0 })
  @Min(0)
  @Max(2000)
  fill: number;
}

@InputType()
export class CompetitionCreateInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field()
  @Text(1, 200)
  title: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => RuleSetEnum, { nullable: true, description: 'Absent: the meet’s rule set and edition.' })
  rules?: RuleSetCode | null;

  @Field(() => String, { nullable: true, description: 'Absent: the newest of `rules`.' })
  @IsOptional()
  @Text(1, 40)
  edition?: string | null;

  @Field({ defaultValue: false })
  @IsBoolean()
  isIndoor: boolean;

  @Field(() => StageEnum, { defaultValue: 'final' })
  stage: Stage;

  @Field(() => QualifyingInput, { nullable: true, description: 'For a qualification, and only there.' })
  @IsOptional()
  @ValidateNested()
  @Type(() => QualifyingInput)
  qualifying?: QualifyingInput | null;

  @Field(() => PlanInput, { nullable: true, description: 'Not for high jump and pole vault.' })
  @IsOptional()
  @ValidateNested()
  @Type(() => PlanInput)
  plan?: PlanInput | null;

  @Field(() => VerticalTermsInput, {
    nullable: true,
    description: 'For high jump and pole vault, and only there.',
  })
  @IsOptional()
  @ValidateNested()
  @Type(() => VerticalTermsInput)
  vertical?: VerticalTermsInput | null;

  @Field(() => UnitEnum, { defaultValue: 'cm' })
  unit: Unit;

  @Field(() => SexEnum, { nullable: true })
  categorySex?: Sex | null;

  @Field(() => String, { nullable: true })
  @IsOptional()
  @Text(1, 40)
  categoryAge?: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'By which age categories it is meant, by their name; absent: those of the rule set.',
  })
  @IsOptional()
  @Text(1, 64)
  categoryScheme?: string | null;

  @Field(() => Int, { nullable: true, description: 'Mass of the implement, where all throw the same.' })
  @IsOptional()
  @Min(1)
  @Max(100_000)
  implementGrams?: number | null;

  @Field(() => Instant, { nullable: true })
  startsAt?: Date | null;
}
