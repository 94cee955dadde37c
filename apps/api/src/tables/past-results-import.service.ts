import {
  athletes,
  clubs,
  pastResults,
  tableImports,
  type AthleteRow,
  type NewPastResult,
  type NewTableImport,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { toldProblems, type CsvProblem } from '../platform/csv/csv-problem.js';
import { csvSourceOf } from '../platform/csv/csv.inputs.js';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { CSV_MISSING } from '../platform/csv/csv.types.js';
import { Database } from '../platform/database/database.js';
import { ID_REUSED } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { decisionsOf, fingerprintProblem, requestPrint } from './decisions.js';
import { importOnce } from './import-once.js';
import type { PastResultsImportInput } from './past-results.inputs.js';
import { pastIdentity, pastTable, type PastLine } from './past-results-csv.js';
import { readNames, undecided, type TableNames } from './table-reading.js';

/** What a table comes to: looked at, or stored. */
export interface ReadPast {
  readonly names: TableNames | null;
  readonly lines: readonly ShownPast[];
  readonly counts: PastCounts;
  readonly problems: readonly CsvProblem[];
  readonly userErrors: readonly UserError[];
  readonly isStored: boolean;
  readonly isReplay: boolean;
}

export interface ShownPast extends PastLine {
  /** Null: the line does not say who it is. */
  readonly athlete: AthleteRow | null;
  readonly isNew: boolean;
}

interface PastCounts extends Record<string, number> {
  readonly results: number;
  readonly athletes: number;
  readonly clubs: number;
}

const NOTHING = {
  ...{ names: null, lines: [], counts: { results: 0, athletes: 0, clubs: 0 }, problems: [], userErrors: [] },
  ...{ isStored: false, isReplay: false },
} satisfies ReadPast;

interface Asked {
  readonly input: PastResultsImportInput;
  readonly source: CsvSource;
  readonly viewer: Identity;
  readonly table: Omit<NewTableImport, 'counts'>;
}

/** Results of seasons past from a table: looked at first, then all of it in one transaction, or nothing. */
@Injectable()
export class PastResultsImportService {
  constructor(private readonly database: Database) {}

  async import(input: PastResultsImportInput, viewer: Identity): Promise<ReadPast> {
    viewer.requireKeeper();
    const source = csvSourceOf(input.csv);
    if (source === null) return { ...NOTHING, userErrors: [CSV_MISSING] };
    const { organisationId, holder } = viewer;
    const table = {
      ...{ organisationId, id: input.id ?? uuidV7(), holds: 'past results' as const, meetId: null },
      fingerprint: requestPrint(source, [input.source, decisionsOf(input)]),
      madeBy: holder ?? '',
    };
    const asked = { input, source, viewer, table };
    return importOnce(this.database, table, (tx) => this.read(tx, asked), replayed);
  }

  private async read(tx: Tx, asked: Asked): Promise<ReadPast> {
    const { input, source, viewer } = asked;
    const today = new Date().toISOString().slice(0, 10);
    const read = pastTable(source, today);
    if ('problems' in read) return { ...NOTHING, problems: toldProblems(read.problems) };
    const { lines } = read;
    const persons = lines.map(({ person }) => person);
    const named = { source, persons, clubs: persons };
    const names = await readNames(tx, viewer.organisationId, named, decisionsOf(input));
    const changed = input.isDryRun ? null : fingerprintProblem(input.fingerprint ?? null, names.fingerprint);
    if (changed) return { ...NOTHING, names, userErrors: [changed] };
    const missing = input.isDryRun ? [] : undecided(names);
    const repeated = await repeatedLines(tx, viewer.organisationId, lines, names);
    const problems = [...names.problems, ...missing, ...repeated];
    const isStored = !input.isDryRun && problems.length === 0;
    const added = { athletes: names.persons.added, clubs: names.clubs.added };
    const counts = { results: lines.length, athletes: added.athletes.length, clubs: added.clubs.length };
    if (isStored) {
      await tableImports.insert(tx, { ...asked.table, counts });
      await clubs.insertAll(tx, added.clubs);
      await athletes.insertAll(tx, added.athletes);
      await pastResults.insert(tx, rowsOf(lines, names, asked));
    }
    return {
      ...NOTHING,
      ...{ names, counts, isStored, lines: shownLines(lines, names), problems: toldProblems(problems) },
    };
  }
}

function replayed(isSame: boolean, counts: Readonly<Record<string, number>>): ReadPast {
  if (!isSame) return { ...NOTHING, userErrors: [ID_REUSED] };
  return { ...NOTHING, counts: { ...NOTHING.counts, ...counts }, isReplay: true };
}

function rowsOf(
  lines: readonly PastLine[],
  { persons }: TableNames,
  { input, viewer, table }: Asked,
): NewPastResult[] {
  return lines.map(({ line, values }) => ({
    ...{ organisationId: viewer.organisationId, id: uuidV7(), athleteId: persons.of(line)!.id, ...values },
    ...{ source: input.source, counts: true, replacesId: null, reason: null },
    ...{ importId: table.id, importLine: line, enteredBy: viewer.holder ?? '' },
  }));
}

function shownLines(lines: readonly PastLine[], { persons }: TableNames): ShownPast[] {
  const added = new Set(persons.added.map(({ id }) => id));
  return lines.map((line) => {
    const athlete = persons.of(line.line);
    return { ...line, athlete, isNew: athlete !== null && added.has(athlete.id) };
  });
}

/** Results that are on record already, or twice in the table. */
async function repeatedLines(
  tx: Tx,
  organisationId: string,
  lines: readonly PastLine[],
  { persons }: TableNames,
): Promise<CsvProblem[]> {
  const added = new Set(persons.added.map(({ id }) => id));
  const ids = new Set(lines.flatMap(({ line }) => persons.of(line)?.id ?? []).filter((id) => !added.has(id)));
  const stored = await pastResults.counting(tx, organisationId, [...ids]);
  const seen = new Map(stored.map((row) => [pastIdentity(row.athleteId, row), 'on record']));
  return lines.flatMap(({ line, values }): CsvProblem[] => {
    const athlete = persons.of(line);
    if (!athlete) return [];
    const key = pastIdentity(athlete.id, values);
    const where = seen.get(key);
    seen.set(key, `in line ${line}`);
    if (where === undefined) return [];
    const message = `The same result of the athlete is ${where} already.`;
    return [{ code: 'KNOWN_ALREADY', line, column: null, message, remedy: 'Take the line out.' }];
  });
}
