import { Field, Int, ObjectType } from '@nestjs/graphql';
import type { FoulCode } from '#rules';
import { FoulReasonEnum } from './entry.inputs.js';

@ObjectType({
  description: 'A reason for a failure that belongs to the event under the rules of the competition.',
})
export class FoulOfEvent {
  @Field(() => FoulReasonEnum)
  reason: FoulCode;

  @Field({ description: 'What happened, as a plain sentence.' })
  sentence: string;

  @Field({ description: 'The rule that makes it a failure.' })
  rule: string;

  @Field({ description: 'The rule number was read, and is not only remembered. The book in force decides.' })
  isConfirmed: boolean;
}

@ObjectType({ description: 'How long a competitor has for one trial of a throw or a horizontal jump.' })
export class TrialTime {
  @Field(() => Int)
  seconds: number;

  @Field(() => Int, { description: 'For two consecutive trials of the same competitor.' })
  consecutiveSeconds: number;

  @Field()
  rule: string;

  @Field({ description: 'The rule was read, and is not only remembered. The book in force decides.' })
  isConfirmed: boolean;
}
