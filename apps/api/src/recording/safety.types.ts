import { Field, ObjectType } from '@nestjs/graphql';
import type { InterruptionCause, SafetyCheckCode } from '#rules';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { InterruptionCauseEnum, SafetyCheckEnum } from './safety.inputs.js';

@ObjectType({ description: 'One point of the checklist of an event.' })
export class SafetyCheckPoint {
  @Field(() => SafetyCheckEnum)
  code: SafetyCheckCode;

  @Field({ description: 'What is confirmed, as a plain sentence.' })
  sentence: string;

  @Field({ description: 'Where the point comes from.' })
  source: string;
}

@ObjectType({ description: 'Something that has stopped a competition and is not cleared.' })
export class SafetyStop {
  @Field(() => Uuid, { description: 'The id of its entry.' })
  entry: string;

  @Field(() => InterruptionCauseEnum)
  cause: InterruptionCause;

  @Field({ description: 'What one does about it, beside waiting.' })
  caution: string;

  @Field(() => String, { nullable: true, description: 'What was seen. Only for the crew.' })
  note: string | null;

  @Field(() => Instant)
  seenAt: Date;
}

@ObjectType({
  description:
    'What the crew looks at before the first warm-up trial and after every interruption, and whether the competition is stopped.',
})
export class CompetitionSafety {
  @Field({ description: 'Nobody is called and no clock runs until the all-clear.' })
  isInterrupted: boolean;

  @Field(() => [SafetyStop])
  stops: SafetyStop[];

  @Field(() => Instant, {
    nullable: true,
    description: 'After lightning: the usual wait after the last flash or thunder ends here.',
  })
  waitsUntil: Date | null;

  @Field(() => String, { nullable: true, description: 'Where the length of the wait comes from.' })
  waitRule: string | null;

  @Field({ description: 'The checklist has been confirmed since the competition was set up.' })
  isConfirmed: boolean;

  @Field({ description: 'A new warm-up was given with the latest all-clear.' })
  hasNewWarmUp: boolean;

  @Field(() => [SafetyCheckPoint], { complexity: 2, description: 'In the order in which one looks.' })
  checklist: SafetyCheckPoint[];

  @Field({ description: 'Stands under every checklist.' })
  caution: string;
}
