import type { Dimension } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DimensionEnum } from './inspection.types.js';

@ObjectType({ description: 'Limits of one measure, which are included.' })
export class DimensionLimit {
  @Field(() => DimensionEnum)
  what: Dimension;

  @Field(() => Int, { nullable: true, description: 'Null: no limit.' })
  minMm: number | null;

  @Field(() => Int, { nullable: true, description: 'Null: no limit.' })
  maxMm: number | null;

  @Field()
  rule: string;

  @Field({ description: 'The rule was read, at least in part, and is not only remembered.' })
  isConfirmed: boolean;
}

@ObjectType({
  description:
    'What an implement must weigh and measure to be thrown in a competition. The referee and the rule book in force decide.',
})
export class ImplementSpecification {
  @Field(() => Int, {
    description: 'The least mass. There is no greatest: what makers print as a range limits nothing.',
  })
  grams: number;

  @Field({ description: 'Why this mass is thrown: a table of the rule set, or the regulations of the meet.' })
  rule: string;

  @Field({ description: 'The rule was read, at least in part, and is not only remembered.' })
  isConfirmed: boolean;

  @Field(() => Int, {
    nullable: true,
    description:
      'What the table of the rule set has for the category, where the meet lays down another mass.',
  })
  tableGrams: number | null;

  @Field(() => [DimensionLimit], {
    complexity: 2,
    description: 'Empty: no limits are known here, and the mass alone is checked. The book may have more.',
  })
  limits: DimensionLimit[];

  @Field(() => [ID], { description: 'The competitors who throw it, in the order of competition.' })
  competitors: string[];

  @Field({ description: 'What to know before relying on it.' })
  caution: string;
}
