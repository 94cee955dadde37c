import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { MarkText } from '../platform/scalars/mark.js';
import { TrialCall } from './trial-call.type.js';

@ObjectType({ description: 'How long somebody has for a jump, and why.' })
export class JumpTime {
  @Field(() => Int)
  seconds: number;

  @Field({
    description:
      '"first trial", "consecutive trials", "one left", "two or three left" or "more than three left".',
  })
  because: string;

  @Field(() => Int, {
    description: 'Competitors left when the bar came to the height: a change applies from the next one.',
  })
  left: number;

  @Field({ description: '"called"; in the pole vault "uprights set".' })
  startsWhen: string;

  @Field({ description: 'The rule that gives the time.' })
  rule: string;
}

@ObjectType({ description: 'The only one who is left, and has won already.' })
export class VerticalWinner {
  @Field(() => ID)
  competitor: string;

  @Field({ description: 'Says at which height to go on. In a combined event nobody does.' })
  isChoosingHeight: boolean;
}

@ObjectType({ description: 'Where a jump-off for first place stands.' })
export class JumpOffProgress {
  @Field({
    description:
      '"due" (nobody has jumped yet), "running", "decided" or "declined" (those left share first).',
  })
  phase: string;

  @Field(() => Int, { description: 'The round that is jumped, or would be, from 1.' })
  round: number;

  @Field(() => MarkText, { description: 'Where the bar is in this round: as jumped, otherwise by the rule.' })
  height: string;

  @Field(() => MarkText, { description: 'Where the rule puts the bar in this round.' })
  ruleHeight: string;

  @Field(() => [ID], { description: 'Who is still in it, in the order of competition.' })
  remaining: string[];

  @Field(() => [ID], { description: 'Who was in it when the round began.' })
  inRound: string[];

  @Field(() => [ID], { description: 'Those of them who have no entry in this round yet.' })
  toJump: string[];
}

@ObjectType({ description: 'Where a high jump or pole vault is.' })
export class VerticalProgress {
  @Field(() => MarkText, { description: 'Where the bar is; in a jump-off its bar.' })
  bar: string;

  @Field(() => MarkText, {
    nullable: true,
    description: 'The height after it; nothing when none is announced.',
  })
  nextHeight: string | null;

  @Field(() => String, {
    nullable: true,
    description:
      'What it waits for: "jump", or "height" (that the bar is set higher than all heights so far); nothing when it is over.',
  })
  awaits: string | null;

  @Field(() => [TrialCall], { description: 'All who are called at the bar, in order.' })
  calls: TrialCall[];

  @Field(() => [TrialCall], { complexity: 3, description: 'Trials below the bar that have no entry yet.' })
  outstanding: TrialCall[];

  @Field(() => [ID], { description: 'Who is still in, in the order of competition.' })
  left: string[];

  @Field(() => JumpTime, { nullable: true, description: 'Of whoever is up.' })
  timeAllowed: JumpTime | null;

  @Field(() => Int, {
    nullable: true,
    description: 'Where whoever is up wants the uprights, in centimetres behind the zero line.',
  })
  behindZeroCm: number | null;

  @Field(() => VerticalWinner, { nullable: true })
  winner: VerticalWinner | null;

  @Field(() => JumpOffProgress, { nullable: true })
  jumpOff: JumpOffProgress | null;
}
