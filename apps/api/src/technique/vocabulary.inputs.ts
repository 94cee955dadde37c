import type { EventCode } from '#rules';
import type { Segment, Stage, Variant, View } from '#technique';
import { Field, InputType } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, ArrayMinSize, IsBoolean, IsOptional, Matches, ValidateNested } from 'class-validator';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { EventEnum } from '../platform/objects/words.js';
import { FAULT_CODE } from './observations.inputs.js';
import { FaultChangeEnum, SegmentEnum, StageEnum, VariantEnum, ViewEnum } from './words.js';

@InputType({
  description:
    'A fault of one’s own. {throw} and {block} stand for the side of the throwing arm and the other one.',
})
export class FaultDraftInput {
  @Field(() => EventEnum)
  event: EventCode;

  @Field()
  @Text(1, 80)
  name: string;

  @Field()
  @Text(1, 200)
  looksLike: string;

  @Field({ description: 'What to try, said as something to do: this is what a child reads.' })
  @Text(1, 200)
  point: string;

  @Field({ description: 'A phase of the event, as the vocabulary has it.' })
  @Text(1, 16)
  phase: string;

  @Field(() => SegmentEnum)
  segment: Segment;

  @Field(() => ViewEnum)
  view: View;

  @Field(() => [VariantEnum], {
    nullable: true,
    description: 'Only in these; absent: in all that have the phase.',
  })
  @IsOptional()
  @ArrayMinSize(1)
  @ArrayMaxSize(4)
  variants?: Variant[] | null;

  @Field(() => StageEnum)
  relevantFrom: Stage;

  @Field({ defaultValue: false, description: 'Plausibly goes with fouls.' })
  @IsBoolean()
  nearFouls: boolean;
}

@InputType()
export class FaultDefineInput {
  @OwnId()
  id?: string | null;

  @Field(() => FaultDraftInput)
  @ValidateNested()
  @Type(() => FaultDraftInput)
  draft: FaultDraftInput;
}

@InputType()
export class FaultChangeInput {
  @OwnId()
  id?: string | null;

  @Field(() => FaultChangeEnum)
  kind: 'rename' | 'retire' | 'merge' | 'hide' | 'show';

  @Field()
  @Matches(FAULT_CODE)
  code: string;

  @Field(() => String, { nullable: true, description: 'The new name, of RENAME.' })
  @IsOptional()
  @Text(1, 80)
  name?: string | null;

  @Field(() => String, { nullable: true, description: 'What it is read as from now on, of MERGE.' })
  @IsOptional()
  @Matches(FAULT_CODE)
  into?: string | null;
}

@InputType({ description: 'Old notes stay on the fault; new ones go to its parts.' })
export class FaultSplitInput {
  @OwnId()
  id?: string | null;

  @Field()
  @Matches(FAULT_CODE)
  code: string;

  @Field(() => [FaultDraftInput])
  @ValidateNested({ each: true })
  @Type(() => FaultDraftInput)
  @ArrayMinSize(2)
  @ArrayMaxSize(6)
  drafts: FaultDraftInput[];
}
