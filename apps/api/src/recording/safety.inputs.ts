import { Field, InputType } from '@nestjs/graphql';
import { ArrayMaxSize, ArrayMinSize, IsOptional } from 'class-validator';
import {
  INTERRUPTION_CAUSES,
  SAFETY_CHECK_CODES,
  type InterruptionCause,
  type SafetyCheckCode,
} from '#rules';
import { enumOf } from '../platform/inputs/enums.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';
import { EntryInput } from './entry.inputs.js';

export const InterruptionCauseEnum = enumOf<InterruptionCause>(
  'InterruptionCause',
  INTERRUPTION_CAUSES,
  'Why nobody is called any more.',
);

export const SafetyCheckEnum = enumOf<SafetyCheckCode>(
  'SafetyCheckCode',
  SAFETY_CHECK_CODES,
  'A point of the checklist of an event; the competition lists those that belong to it, in words.',
);

@InputType({
  description:
    'Stops the calling and the clock at once. Each new flash or thunder is entered as well: the wait starts anew.',
})
export class CompetitionInterruptInput extends EntryInput {
  @Field(() => InterruptionCauseEnum)
  cause: InterruptionCause;

  @Field(() => String, { nullable: true, description: 'What was seen, in a few words; no names.' })
  @IsOptional()
  @Text(1, 500)
  note?: string | null;

  @Field(() => Instant, { description: 'When it was seen.' })
  seenAt: Date;
}

@InputType({
  description:
    'The responsible official has gone through the checklist at the place. The referee, the venue’s rules and local law decide; this is no guarantee.',
})
export class CompetitionClearInput extends EntryInput {
  @Field(() => [SafetyCheckEnum], { description: 'Every point of the checklist of the event.' })
  @ArrayMinSize(1)
  @ArrayMaxSize(SAFETY_CHECK_CODES.length)
  confirmed: SafetyCheckCode[];

  @Field({ defaultValue: false, description: 'A new warm-up is given, as after a long stop.' })
  newWarmUp: boolean;

  @Field(() => Instant, { description: 'When it was said.' })
  clearedAt: Date;

  @Field(() => String, {
    nullable: true,
    description: 'The referee’s ground for not waiting as long as usual after lightning.',
  })
  @IsOptional()
  @Text(1, 500)
  despite?: string | null;
}
