import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';

/* What the table of a high jump or pole vault has beside what every table has. */

@ObjectType({ description: 'One trial at the bar as it stands.' })
export class TableJump {
  @Field(() => Uuid, { description: 'The id of its entry.' })
  entry: string;

  @Field(() => MarkText)
  height: string;

  @Field(() => Int, { description: 'The trial at the height; in the jump-off its round.' })
  trial: number;

  @Field({ description: 'As on a field card: "O" cleared, "X" failed, "-" passed, "r" retired.' })
  cell: string;

  @Field(() => String, { nullable: true, description: 'Why it was a failure, if a reason was given.' })
  foul: string | null;

  @Field(() => String, { nullable: true, description: 'Something out of the ordinary that decided it.' })
  incident: string | null;

  @Field({ description: 'A failure under protest: the referee has not ruled yet.' })
  isProtested: boolean;

  @Field(() => Int, {
    nullable: true,
    description: 'Where the uprights stood, in centimetres behind the zero line, if that was noted.',
  })
  behindZeroCm: number | null;
}

@ObjectType({ description: 'What one competitor did at one height.' })
export class TableHeight {
  @Field(() => MarkText)
  height: string;

  @Field(() => String, { nullable: true, description: 'As on a field card: "O", "XXO", "X-", "-", "Xr", …' })
  cell: string | null;

  @Field(() => [TableJump], { complexity: 3 })
  trials: TableJump[];
}

@ObjectType({ description: 'A line of the table of a high jump or pole vault.' })
export class VerticalRow {
  @Field(() => [TableHeight], {
    complexity: 12,
    description: 'One for each height of the table, in the same order.',
  })
  heights: TableHeight[];

  @Field(() => [TableJump], {
    complexity: 3,
    description: 'In the jump-off for first place, round by round.',
  })
  jumpOff: TableJump[];

  @Field(() => Int, { description: 'Failures at the greatest height cleared, without the jump-off.' })
  failuresAtBest: number;

  @Field(() => Int, { description: 'Failures up to and including that height; those above it never count.' })
  failuresToBest: number;

  @Field(() => Int, { description: 'Since the last clearance, across heights; three end the competition.' })
  failuresInARow: number;

  @Field({
    description:
      '"in", "three failures", "retired", "standard reached", "did not start" or "disqualified": whether a trial may follow, and why none does.',
  })
  condition: string;

  @Field({
    description:
      'At the height of the bar: "to jump", "cleared", "passing", "behind" (a trial below it has no entry yet) or "out".',
  })
  atBar: string;

  @Field(() => Int, {
    nullable: true,
    description: 'How the uprights are wanted from now on, in centimetres behind the zero line.',
  })
  behindZeroCm: number | null;
}

@ObjectType({ description: 'What one competitor did in one round of the jump-off.' })
export class JumpOffTry {
  @Field(() => ID)
  competitor: string;

  @Field({ description: '"O", "X", "-" or "r".' })
  cell: string;
}

@ObjectType({ description: 'One round of the jump-off for first place.' })
export class JumpOffRound {
  @Field(() => Int)
  round: number;

  @Field(() => MarkText)
  height: string;

  @Field(() => [JumpOffTry], { complexity: 3 })
  tries: JumpOffTry[];
}

@ObjectType({ description: 'What the rows of the table of a high jump or pole vault have in common.' })
export class VerticalTable {
  @Field(() => [MarkText], {
    description: 'Rising: those announced and those at which the bar was set, less those left out.',
  })
  heights: string[];

  @Field(() => [JumpOffRound], { complexity: 3, description: 'In the order taken.' })
  jumpOff: JumpOffRound[];
}
