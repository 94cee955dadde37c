import type { Sex, StartingMarkRow } from '#persistence';
import { formatMark, type EventCode } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { globalId } from '../platform/inputs/global-id.js';
import { EventEnum, SexEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({ description: 'A mark with which lists begin, for those who keep them.' })
export class StartingMark {
  @Field(() => Uuid)
  id: string;

  @Field(() => ID, { nullable: true })
  clubId: string | null;

  @Field(() => ID, { nullable: true })
  meetId: string | null;

  @Field(() => ID, { nullable: true })
  athleteId: string | null;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => MarkText)
  mark: string;

  @Field(() => String, { nullable: true })
  wind: string | null;

  @Field()
  isIndoor: boolean;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => SexEnum)
  sex: Sex;

  @Field()
  age: string;

  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => String, { nullable: true })
  place: string | null;

  @Field({ description: 'False: only says that what it replaces is taken back.' })
  counts: boolean;

  @Field(() => Uuid, { nullable: true })
  replacesId: string | null;

  @Field(() => String, { nullable: true })
  reason: string | null;

  @Field(() => Int, { nullable: true, description: 'Of the table that it came in.' })
  line: number | null;
}

@ObjectType()
export class StartingMarkAddPayload {
  @Field(() => StartingMark, { nullable: true })
  startingMark: StartingMark | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class StartingMarkWithdrawPayload extends StartingMarkAddPayload {}

@ObjectType()
export class StartingMarksImportPayload {
  @Field(() => [StartingMark], { description: 'What was stored, or would be, line by line.' })
  startingMarks: StartingMark[];

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError], {
    description: 'Every problem of the table, by line and column. Nothing was stored.',
  })
  userErrors: UserError[];
}

export type ShownMark = Omit<StartingMarkRow, 'organisationId' | 'enteredBy' | 'enteredAt'>;

export function startingMarkObject(row: ShownMark): StartingMark {
  const idOf = (kind: 'Club' | 'Meet' | 'Athlete', id: string | null): string | null =>
    id === null ? null : globalId(kind, id);
  return {
    id: row.id,
    clubId: idOf('Club', row.clubId),
    meetId: idOf('Meet', row.meetId),
    athleteId: idOf('Athlete', row.athleteId),
    event: row.event,
    mark: formatMark(row.mark, row.unit),
    wind: row.wind,
    isIndoor: row.indoor,
    implementGrams: row.implementGrams,
    sex: row.sex,
    age: row.age,
    onDate: row.onDate,
    place: row.place,
    counts: row.counts,
    replacesId: row.replacesId,
    reason: row.reason,
    line: row.importLine,
  };
}
