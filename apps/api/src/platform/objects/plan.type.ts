import type { Plan as ResolvedPlan } from '#rules';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { CutTiesEnum, ReorderEnum } from './words.js';

@ObjectType({ description: 'After this round the field is reduced.' })
export class Cut {
  @Field(() => Int)
  after: number;

  @Field(() => Int, { description: 'How many go on.' })
  through: number;
}

@ObjectType({ description: 'The plan in force: how many trials, who goes on, in which order.' })
export class Plan implements ResolvedPlan {
  @Field(() => Int)
  rounds: number;

  @Field(() => [Cut])
  cuts: Cut[];

  @Field(() => CutTiesEnum)
  cutTies: ResolvedPlan['cutTies'];

  @Field(() => [Int], { description: 'A new order of competition is made after these rounds.' })
  reorderAfter: number[];

  @Field(() => ReorderEnum)
  reorder: ResolvedPlan['reorder'];
}
