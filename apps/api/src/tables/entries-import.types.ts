import { formatMark } from '#rules';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { csvFault } from '../platform/csv/csv.types.js';
import { UserError } from '../platform/errors/user-error.types.js';
import { globalId } from '../platform/inputs/global-id.js';
import { MarkText } from '../platform/scalars/mark.js';
import type { ReadEntries, ShownEntry } from './entries-import.service.js';
import { AthleteQuestion, athleteQuestion, ClubQuestion, clubQuestion } from './table-questions.types.js';

@ObjectType({ description: 'A line of the table as it would stand on a start list.' })
export class ImportedEntry {
  @Field(() => Int)
  line: number;

  @Field(() => ID)
  competitionId: string;

  @Field()
  name: string;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field({ description: 'The athlete comes on record with this table.' })
  isNewAthlete: boolean;

  @Field(() => String, { nullable: true, description: 'Null: the line, or another one, is at fault.' })
  bib: string | null;

  @Field(() => MarkText, { nullable: true })
  seedMark: string | null;
}

@ObjectType()
export class EntriesImportPayload {
  @Field(() => [ImportedEntry], { description: 'What was stored, or would be, line by line.' })
  entries: ImportedEntry[];

  @Field(() => Int)
  entryCount: number;

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

  @Field({ description: 'The entries are closed: to store the table needs a reason.' })
  needsReason: boolean;

  @Field({ description: 'All of it is stored.' })
  isStored: boolean;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError], {
    description: 'Every problem of the table, by line and column. While there is one nothing is stored.',
  })
  userErrors: UserError[];
}

export function entriesImportPayload(read: ReadEntries): EntriesImportPayload {
  return {
    entries: read.lines.map(importedEntry),
    entryCount: read.counts.entries,
    newAthleteCount: read.counts.athletes,
    newClubCount: read.counts.clubs,
    athleteQuestions: (read.names?.persons.questions ?? []).map(athleteQuestion),
    clubQuestions: (read.names?.clubs.questions ?? []).map(clubQuestion),
    fingerprint: read.names?.fingerprint ?? null,
    needsReason: read.needsReason,
    isStored: read.isStored || read.isReplay,
    isReplay: read.isReplay,
    userErrors: [...read.userErrors, ...read.problems.map((one) => csvFault(one, ['csv']))],
  };
}

function importedEntry({ line, competition, name, club, isNew, row }: ShownEntry): ImportedEntry {
  return {
    ...{ line, competitionId: globalId('Competition', competition.id), name, club, isNewAthlete: isNew },
    bib: row?.bib ?? null,
    seedMark:
      row?.seedMark === undefined || row.seedMark === null
        ? null
        : formatMark(row.seedMark, competition.unit),
  };
}
