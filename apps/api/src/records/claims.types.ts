import type { Sex } from '#persistence';
import type { Outstanding, WindStanding } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { SexEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import {
  OutstandingEnum,
  RecordDecisionEnum,
  RecordKindEnum,
  RecordRelationEnum,
  WindStandingEnum,
  type dashed,
} from './record-words.js';
import type { KindCode } from './records.types.js';

@ObjectType({
  description:
    'What a mark was at the moment it was made, against the marks before it: a best, a record, level with one.',
})
export class RecordClaim {
  @Field(() => RecordKindEnum)
  kind: KindCode;

  @Field(() => RecordRelationEnum)
  relation: 'first' | 'better' | 'equal';

  @Field({ description: 'Counts already. False: would be, once what is outstanding is done; or not at all.' })
  counts: boolean;

  @Field(() => String, { nullable: true, description: 'Why it will not count; null: it may.' })
  whyNot: string | null;

  @Field(() => [OutstandingEnum])
  outstanding: readonly ReturnType<typeof dashed<Outstanding>>[];

  @Field({
    description: 'Such as "would be a club record of 53.10, before 52.00 (ratification outstanding)".',
  })
  sentence: string;

  @Field({ description: 'A greater mark stands in the list by now.' })
  isBeaten: boolean;

  @Field(() => MarkText)
  mark: string;

  @Field(() => MarkText, { nullable: true, description: 'The best until then; null: there was none.' })
  before: string | null;

  @Field(() => WindStandingEnum)
  wind: ReturnType<typeof dashed<WindStanding>>;

  @Field(() => Uuid, { description: 'The attempt.' })
  attempt: string;

  @Field(() => ID)
  competitor: string;

  @Field()
  bib: string;

  @Field({ description: 'What may be shown of the name.' })
  name: string;

  @Field(() => String, { nullable: true, description: 'The club or the meet; null: an athlete’s own.' })
  of: string | null;

  @Field(() => SexEnum, { nullable: true })
  sex: Sex | null;

  @Field(() => String, { nullable: true })
  age: string | null;

  @Field(() => CalendarDate, {
    nullable: true,
    description: 'The first day of the season, of a season best.',
  })
  season: string | null;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => Boolean, { nullable: true, description: 'Null: one list whatever the roof.' })
  isIndoor: boolean | null;

  @Field(() => RecordDecisionEnum, {
    nullable: true,
    description: 'What the referee decided about the mark.',
  })
  decision: 'ratified' | 'refused' | null;
}
