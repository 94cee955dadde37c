import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { MarkText } from '../platform/scalars/mark.js';

@ObjectType({ description: 'The smallest mark that brings a better place, as everybody else stands.' })
export class NeededPlace {
  @Field(() => Int)
  place: number;

  @Field({ description: 'In high jump and pole vault the height to be cleared.' })
  mark: string;

  @Field(() => Int, {
    nullable: true,
    description: 'In high jump and pole vault: the trial at that height that is still early enough.',
  })
  trial: number | null;

  @Field({ description: 'The place is shared with this mark.' })
  isShared: boolean;

  @Field(() => ID, { nullable: true, description: 'Who holds the place now.' })
  rival: string | null;

  @Field(() => String, { nullable: true })
  rivalBest: string | null;

  @Field(() => String, {
    nullable: true,
    description:
      'What a mark equal to the rival’s best does by the rule for ties: "takes", "shares", "falls-short", or "undecidable" (shared, because somebody level has a valid trial that was not measured).',
  })
  equalMark: string | null;
}

@ObjectType({ description: 'What brings a competitor among those who go on.' })
export class NeededPass {
  @Field(() => Int, { nullable: true, description: 'The round of the cut; nothing in a qualification.' })
  afterRound: number | null;

  @Field({ description: 'Among them already, as things stand.' })
  isIn: boolean;

  @Field(() => String, { nullable: true })
  mark: string | null;

  @Field(() => ID, { nullable: true, description: 'The last of those who go on now.' })
  rival: string | null;

  @Field(() => String, { nullable: true })
  rivalBest: string | null;

  @Field(() => Boolean, {
    nullable: true,
    description: 'Whether a mark equal to the rival’s best is enough.',
  })
  isEqualEnough: boolean | null;
}

@ObjectType({ description: 'A height to be cleared, and at which trial at the latest.' })
export class NeededClearance {
  @Field(() => MarkText)
  height: string;

  @Field(() => Int)
  trial: number;
}

@ObjectType({ description: 'What is needed in high jump and pole vault, beside the places.' })
export class VerticalNeededNow {
  @Field(() => NeededClearance, { nullable: true, description: 'The trial that is next.' })
  next: NeededClearance | null;

  @Field(() => NeededClearance, {
    nullable: true,
    description: 'In a qualification: what reaches the standard.',
  })
  standard: NeededClearance | null;

  @Field(() => NeededClearance, {
    nullable: true,
    description: 'In a qualification that is filled up: what brings the competitor among those who go on.',
  })
  fill: NeededClearance | null;
}

@ObjectType({
  description: 'What one competitor needs now: with the next trial, while the others add nothing.',
})
export class NeededNow {
  @Field(() => ID)
  competitor: string;

  @Field()
  bib: string;

  @Field(() => Int, { nullable: true, description: 'As it stands.' })
  place: number | null;

  @Field(() => Int, {
    nullable: true,
    description:
      'The round of the next trial, in high jump and pole vault the trial at the height; nothing when there is none.',
  })
  round: number | null;

  @Field(() => String, { nullable: true, description: 'Why there is no further trial that counts.' })
  barrier: string | null;

  @Field(() => [NeededPlace], { description: 'The nearest better place first.' })
  places: NeededPlace[];

  @Field(() => NeededPass, { nullable: true, description: 'The next cut.' })
  cut: NeededPass | null;

  @Field(() => String, {
    nullable: true,
    description: 'In a qualification: the mark that reaches the standard.',
  })
  standard: string | null;

  @Field(() => NeededPass, {
    nullable: true,
    description: 'In a qualification that is filled up by the best of the others.',
  })
  fill: NeededPass | null;

  @Field(() => VerticalNeededNow, {
    nullable: true,
    description: 'In high jump and pole vault, and only there.',
  })
  vertical: VerticalNeededNow | null;
}
