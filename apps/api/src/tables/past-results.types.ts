import type { PastResultRow } from '#persistence';
import { formatMark, type EventCode } from '#rules';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { csvFault } from '../platform/csv/csv.types.js';
import { UserError } from '../platform/errors/user-error.types.js';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import type { PastValues } from './past-results-csv.js';
import type { ReadPast, ShownPast } from './past-results-import.service.js';
import { AthleteQuestion, athleteQuestion, ClubQuestion, clubQuestion } from './table-questions.types.js';

@ObjectType({ isAbstract: true })
abstract class ToldResult {
  @Field(() => EventEnum)
  event: EventCode;

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

  @Field()
  meetName: string;

  @Field(() => Int, { nullable: true })
  place: number | null;
}

@ObjectType({
  description:
    'A result of the athlete from before, or from elsewhere, as it was told. As private as the athlete.',
})
export class PastResult extends ToldResult {
  @Field(() => Uuid)
  id: string;

  @Field({ description: 'Who says so.' })
  source: string;
}

@ObjectType()
export class PastResultConnection extends connectionType(PastResult, 'PastResult') {}

@ObjectType({ description: 'A line of the table as it would be kept.' })
export class ImportedPastResult extends ToldResult {
  @Field(() => Int)
  line: number;

  @Field(() => String, { nullable: true, description: 'Null: the line does not say who it is.' })
  name: string | null;

  @Field({ description: 'The athlete comes on record with this table.' })
  isNewAthlete: boolean;
}

@ObjectType()
export class PastResultsImportPayload {
  @Field(() => [ImportedPastResult], { description: 'What was stored, or would be, line by line.' })
  pastResults: ImportedPastResult[];

  @Field(() => Int)
  resultCount: number;

  @Field(() => Int)
  newAthleteCount: number;

  @Field(() => Int)
  newClubCount: number;

  @Field(() => [AthleteQuestion], { description: 'Whoever comes close to somebody known: the same, or new?' })
  athleteQuestions: AthleteQuestion[];

  @Field(() => [ClubQuestion])
  clubQuestions: ClubQuestion[];

  @Field(() => String, { nullable: true, description: 'Send it with the decisions to store the table.' })
  fingerprint: string | null;

  @Field({ description: 'All of it is stored.' })
  isStored: boolean;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError], {
    description: 'Every problem of the table, by line and column. While there is one nothing is stored.',
  })
  userErrors: UserError[];
}

@ObjectType()
export class PastResultWithdrawPayload {
  @Field(() => PastResult, { nullable: true, description: 'What was taken back.' })
  pastResult: PastResult | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

function toldResult(values: PastValues): ToldResult {
  const { event, mark, unit, wind, indoor, implementGrams, onDate, meetName, place } = values;
  return {
    ...{ event, mark: formatMark(mark, unit), wind, isIndoor: indoor, implementGrams, onDate, meetName },
    place,
  };
}

export function pastResultObject(row: Omit<PastResultRow, 'enteredAt'>): PastResult {
  return { ...toldResult(row), id: row.id, source: row.source };
}

export function pastResultsImportPayload(read: ReadPast): PastResultsImportPayload {
  return {
    pastResults: read.lines.map(importedResult),
    resultCount: read.counts.results,
    newAthleteCount: read.counts.athletes,
    newClubCount: read.counts.clubs,
    athleteQuestions: (read.names?.persons.questions ?? []).map(athleteQuestion),
    clubQuestions: (read.names?.clubs.questions ?? []).map(clubQuestion),
    fingerprint: read.names?.fingerprint ?? null,
    isStored: read.isStored || read.isReplay,
    isReplay: read.isReplay,
    userErrors: [...read.userErrors, ...read.problems.map((one) => csvFault(one, ['csv']))],
  };
}

function importedResult({ line, values, athlete, isNew }: ShownPast): ImportedPastResult {
  const name = athlete && `${athlete.givenName} ${athlete.familyName}`;
  return { ...toldResult(values), line, name, isNewAthlete: isNew };
}
