import type { Sex, Unit } from '#persistence';
import type { EventCode, RecordKind } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { Competition } from '../platform/objects/competition.type.js';
import { EventEnum, SexEnum, UnitEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { RecordKindEnum, RecordRelationEnum, type dashed } from './record-words.js';

export type KindCode = ReturnType<typeof dashed<RecordKind>>;

@ObjectType({
  description: 'A mark in a list, with where it comes from: an attempt of a competition, or a starting mark.',
})
export class RecordMark {
  @Field(() => MarkText)
  mark: string;

  @Field(() => String, { nullable: true, description: '"+1.3", "NWI", or nothing.' })
  wind: string | null;

  @Field()
  isIndoor: boolean;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => String, {
    nullable: true,
    description: 'What may be shown of the name; null: nothing, or it is not on record.',
  })
  holder: string | null;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field(() => Competition, { nullable: true, description: 'Null: a starting mark or a past result.' })
  competition: Competition | null;

  @Field(() => ID, { nullable: true })
  competitor: string | null;

  @Field(() => Uuid, { nullable: true, description: 'The attempt, in the competition’s journal.' })
  attempt: string | null;

  @Field(() => Uuid, { nullable: true })
  startingMark: string | null;

  @Field(() => Uuid, {
    nullable: true,
    description: 'A result from before, or from elsewhere, of the athlete.',
  })
  pastResult: string | null;

  @Field(() => String, { nullable: true, description: 'Of a past result: who says so.' })
  source: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'Where it was made; of a past result the name of the meet.',
  })
  place: string | null;
}

@ObjectType({ description: 'Who held a best or a record, from the day of the mark on.' })
export class RecordHolding {
  @Field(() => RecordMark)
  mark: RecordMark;

  @Field(() => RecordRelationEnum)
  relation: 'first' | 'better' | 'equal';

  @Field(() => CalendarDate, {
    nullable: true,
    description: 'When a better one was made; null: it stands.',
  })
  until: string | null;
}

@ObjectType({ description: 'All marks that compete to be one best or one record.' })
export class RecordList {
  @Field(() => RecordKindEnum)
  kind: KindCode;

  @Field(() => String, { nullable: true, description: 'The club or the meet; null: an athlete’s own.' })
  of: string | null;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => UnitEnum)
  unit: Unit;

  @Field(() => Int, { nullable: true, description: 'Marks with another implement stand in another list.' })
  implementGrams: number | null;

  @Field(() => CalendarDate, {
    nullable: true,
    description: 'Of a changed model of implement: the day from which it was thrown.',
  })
  modelFrom: string | null;

  @Field(() => SexEnum, { nullable: true, description: 'Of club and meet records.' })
  sex: Sex | null;

  @Field(() => String, { nullable: true, description: 'Of club and meet records; `senior` is open to all.' })
  age: string | null;

  @Field(() => CalendarDate, {
    nullable: true,
    description: 'The first day of the season, of a season best.',
  })
  season: string | null;

  @Field(() => Boolean, { nullable: true, description: 'Null: one list whatever the roof.' })
  isIndoor: boolean | null;

  @Field(() => [RecordMark], {
    description: 'The holder; after it those who are level. Empty: nothing counts yet.',
  })
  best: RecordMark[];

  @Field(() => [RecordMark], {
    description: 'Would be the record: waits for the referee or for a wind reading. In order of time.',
  })
  wouldBe: RecordMark[];

  @Field(() => [RecordMark], { description: 'Greater marks that only the wind keeps from counting.' })
  windAssisted: RecordMark[];

  @Field(() => [RecordHolding], {
    description: 'The oldest first, as the marks and decisions of today tell it.',
  })
  history: RecordHolding[];
}
