import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { MarkText } from '../platform/scalars/mark.js';

@ObjectType({ description: 'A trial that is to be called.' })
export class TrialCall {
  @Field(() => ID)
  competitor: string;

  @Field()
  bib: string;

  @Field()
  name: string;

  @Field(() => Int, {
    description: 'In high jump and pole vault the trial at the height, from 1; in a jump-off its round.',
  })
  round: number;

  @Field(() => String, { nullable: true })
  flight: string | null;

  @Field(() => MarkText, { nullable: true, description: 'Where the bar is, in high jump and pole vault.' })
  height: string | null;

  @Field({ description: 'For first place, in high jump and pole vault.' })
  isJumpOff: boolean;

  @Field({
    description: 'Somebody who is out unless his protest is upheld: what he does now is held until then.',
  })
  isUnderProtest: boolean;
}
