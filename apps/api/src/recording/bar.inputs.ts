import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { ArrayMaxSize, IsInt, Max, Min } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { MarkText } from '../platform/scalars/mark.js';
import { CalledFirst, Reason } from '../platform/inputs/entry-fields.js';
import { EntryInput } from './entry.inputs.js';
import { MAX_TRIAL } from './jump.inputs.js';

@InputType({
  description:
    'The bar is set at this height. Along the announced heights it rises without this entry as soon as all have taken their trials.',
})
export class BarSetInput extends EntryInput {
  @Field(() => MarkText, { description: 'In the unit of the competition.' })
  height: string;

  @Field(() => [MarkText], {
    defaultValue: [],
    description: 'Lower heights that are not jumped, since the winner chose or all agreed.',
  })
  @ArrayMaxSize(200)
  leavesOut: string[];
}

@InputType({
  description:
    'How a vaulter wants the uprights from now on. The clock of his trial starts when they are set.',
})
export class UprightsSetInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => Int, { description: 'Centimetres behind the zero line, towards the landing area.' })
  @IsInt()
  @Min(0)
  @Max(1000)
  behindZeroCm: number;
}

@InputType({
  description: 'Those level for first, or still in the jump-off, do not jump (on): they share the place.',
})
export class JumpOffDeclineInput extends EntryInput {
  @Reason()
  reason: string;
}

@InputType({
  description:
    'Who is called first for one trial at one height; those who are not named follow in their order.',
})
export class JumpOrderSetInput extends EntryInput {
  @Field(() => MarkText)
  height: string;

  @Field(() => Int, { description: 'First, second or third trials at the height, from 1.' })
  @IsInt()
  @Min(1)
  @Max(MAX_TRIAL)
  trial: number;

  @CalledFirst()
  competitorIds: string[];

  @Reason()
  reason: string;
}
