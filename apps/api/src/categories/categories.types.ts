import type { AgeDay, EventCode, RuleSetCode } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { EventEnum, RuleSetEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import { AgeDayKindEnum } from './category-words.js';

@ObjectType({ description: 'One age category, in completed years, both included.' })
export class AgeCategory {
  @Field()
  code: string;

  @Field(() => Int, { nullable: true })
  minAge: number | null;

  @Field(() => Int, { nullable: true })
  maxAge: number | null;
}

@ObjectType({ description: 'Age categories that are in force, and on which day an age counts.' })
export class AgeCategories {
  @Field()
  scheme: string;

  @Field(() => RuleSetEnum, {
    nullable: true,
    description: 'Under which rule set they count without being named.',
  })
  rules: RuleSetCode | null;

  @Field({ description: 'Laid down by the organisation itself.' })
  isOwn: boolean;

  @Field(() => CalendarDate, { nullable: true })
  validFrom: string | null;

  @Field(() => CalendarDate, { nullable: true })
  validUntil: string | null;

  @Field(() => AgeDayKindEnum)
  ageOn: AgeDay['kind'];

  @Field(() => String, { nullable: true, description: 'Of ageOn NEXT, such as 08-31.' })
  ageOnDay: string | null;

  @Field(() => [AgeCategory], { description: 'The first that fits counts.' })
  categories: AgeCategory[];

  @Field({ description: 'Where they are laid down.' })
  source: string;

  @Field({ description: 'The source was read, and is not only remembered. The book in force decides.' })
  isConfirmed: boolean;
}

@ObjectType()
export class CategoryDefinitionAddPayload {
  @Field(() => AgeCategories, { nullable: true })
  ageCategories: AgeCategories | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType({ description: 'A line of the list by age-graded marks.' })
export class AgeGradedRow {
  @Field(() => ID)
  competitor: string;

  @Field()
  bib: string;

  @Field({ description: 'What the meet shows of the name.' })
  name: string;

  @Field(() => String, { nullable: true, description: 'By which category the factor was chosen.' })
  category: string | null;

  @Field(() => MarkText, { nullable: true })
  mark: string | null;

  @Field(() => MarkText, { nullable: true, description: 'The mark times the factor, down to a whole unit.' })
  graded: string | null;

  @Field(() => Int, { nullable: true, description: 'In this list, and nowhere else.' })
  place: number | null;

  @Field()
  isEqual: boolean;
}

@ObjectType({
  description: 'Marks of veterans times their age factors: a list beside the result. It decides no place.',
})
export class AgeGradedList {
  @Field({ description: 'The publication that the factors are from.' })
  source: string;

  @Field({ description: 'Says that the list stands beside the places.' })
  remark: string;

  @Field(() => [AgeGradedRow])
  rows: AgeGradedRow[];
}

@ObjectType()
export class AgeFactorsSetPayload {
  @Field(() => EventEnum, { nullable: true })
  event: EventCode | null;

  @Field(() => Int, { nullable: true, description: 'From 1; what was in force before is kept.' })
  revision: number | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}
