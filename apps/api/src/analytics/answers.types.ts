import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';

@ObjectType('AnswerInterval', { description: 'An end that is null has no bound.' })
export class Interval {
  @Field(() => Float, { nullable: true })
  low: number | null;

  @Field(() => Float, { nullable: true })
  high: number | null;

  @Field(() => Float, { description: 'The share of cases in which such intervals hold the truth.' })
  level: number;
}

@ObjectType({ description: 'Why there is no number yet. It is a normal answer: it says what is missing.' })
export class RefusedAnswer {
  @Field()
  code: string;

  @Field(() => Int)
  have: number;

  @Field(() => Int)
  need: number;

  @Field({ description: 'What is counted.' })
  of: string;

  @Field(() => Int, {
    nullable: true,
    description: 'About how many throws are missing; null where throwing more is no remedy.',
  })
  missingThrows: number | null;

  @Field()
  sentence: string;
}

@ObjectType({ isAbstract: true })
export abstract class Answered {
  @Field(() => RefusedAnswer, { nullable: true, description: 'Exactly where there is no number.' })
  refused: RefusedAnswer | null;

  @Field(() => [ID], { description: 'The attempts behind it, as the history names them.' })
  attempts: readonly string[];
}
