import {
  athletes,
  clubs,
  competitions,
  meets,
  tableImports,
  type CompetitionRow,
  type CompetitorRow,
  type NewTableImport,
  type Reads,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { EnteringService, type EntryFault } from '../entries/entering.service.js';
import { toldProblems, type CsvProblem } from '../platform/csv/csv-problem.js';
import { csvSourceOf } from '../platform/csv/csv.inputs.js';
import { CSV_MISSING } from '../platform/csv/csv.types.js';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { Database } from '../platform/database/database.js';
import { ID_REUSED, notFound } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { entryTable, ENTRY_COLUMN_OF, type EntryLine } from './entries-csv.js';
import { decisionsOf, fingerprintProblem, requestPrint } from './decisions.js';
import type { EntriesImportInput } from './entries-import.inputs.js';
import { importOnce } from './import-once.js';
import { readNames, undecided, type TableNames } from './table-reading.js';

/** What a table comes to: looked at, or stored. */
export interface ReadEntries {
  readonly names: TableNames | null;
  readonly lines: readonly ShownEntry[];
  readonly counts: EntryCounts;
  readonly problems: readonly CsvProblem[];
  readonly userErrors: readonly UserError[];
  readonly isStored: boolean;
  readonly isReplay: boolean;
  /** The entries are closed: what is stored now needs a reason. */
  readonly needsReason: boolean;
}

export interface ShownEntry {
  readonly line: number;
  readonly competition: CompetitionRow;
  readonly name: string;
  readonly club: string | null;
  readonly isNew: boolean;
  /** Null: the line is at fault. */
  readonly row: CompetitorRow | null;
}

export interface EntryCounts extends Record<string, number> {
  readonly entries: number;
  readonly athletes: number;
  readonly clubs: number;
}

const NOTHING = {
  ...{ names: null, lines: [], counts: { entries: 0, athletes: 0, clubs: 0 }, problems: [], userErrors: [] },
  ...{ isStored: false, isReplay: false, needsReason: false },
} satisfies ReadEntries;

/** Entries from a table: looked at first, then all of it in one transaction, or nothing. */
@Injectable()
export class EntriesImportService {
  constructor(
    private readonly database: Database,
    private readonly entering: EnteringService,
    private readonly changes: CompetitionChanges,
  ) {}

  async import(input: EntriesImportInput, viewer: Identity): Promise<ReadEntries> {
    const { organisationId } = viewer;
    viewer.requireDirector(input.meetId);
    const source = csvSourceOf(input.csv);
    if (source === null) return { ...NOTHING, userErrors: [CSV_MISSING] };
    const { meetId, reason = null } = input;
    const table = {
      ...{ organisationId, id: input.id ?? uuidV7(), holds: 'entries' as const, meetId },
      fingerprint: requestPrint(source, [meetId, reason, decisionsOf(input)]),
      madeBy: viewer.holder ?? '',
    };
    const asked = { input, source, viewer, table };
    const done = await importOnce(this.database, table, (tx) => this.read(tx, asked), replayed);
    if (done.isStored) await this.announce(done, viewer);
    return done;
  }

  private async read(tx: Tx, asked: Asked): Promise<ReadEntries> {
    const { input, source, viewer } = asked;
    const { organisationId } = viewer;
    if (!(await meets.lock(tx, organisationId, input.meetId))) {
      return { ...NOTHING, userErrors: [notFound('meet', ['meetId'])] };
    }
    const table = entryTable(source, await competitions.ofMeet(tx, organisationId, input.meetId));
    if ('problems' in table) return withProblems(table.problems);
    const names = await namesOf(tx, table.lines, asked);
    const changed = input.isDryRun ? null : fingerprintProblem(input.fingerprint ?? null, names.fingerprint);
    if (changed) return { ...NOTHING, names, userErrors: [changed] };
    const missing = input.isDryRun ? [] : undecided(names);
    return this.enter(tx, table.lines, names, [...names.problems, ...missing], asked);
  }

  /** Tries the entries on the start lists as they are, and stores them when nothing speaks against any of them. */
  private async enter(
    tx: Tx,
    lines: readonly EntryLine[],
    names: TableNames,
    before: readonly CsvProblem[],
    { input, viewer, table }: Asked,
  ): Promise<ReadEntries> {
    const { meetId, isDryRun, reason = null } = input;
    const added = { athletes: names.persons.added, clubs: names.clubs.added };
    const usable = lines.filter(({ line, person }) => person === null || names.persons.of(line) !== null);
    const known = usable.flatMap(({ line }) => names.persons.of(line) ?? []);
    const entering = {
      ...{ meetId, viewer, role: 'director' as const, reason },
      ...{ known: [...new Set(known)], knownClubs: added.clubs },
    };
    const wanted = usable.map((line) => newLine(line, names, viewer.organisationId));
    const tried = await this.entering.enterAll(tx, wanted, entering, true);
    const faults = 'faults' in tried ? tried.faults : [];
    const late = faults.find(({ refusal }) => refusal.code === 'LATE_REASON_MISSING');
    if (late && !isDryRun) return { ...NOTHING, names, userErrors: [late.refusal] };
    const problems = [
      ...before,
      ...faults.filter((one) => one !== late).map((one) => problemOf(one, usable)),
    ];
    const isStored = !isDryRun && problems.length === 0;
    const counts = { entries: usable.length, athletes: added.athletes.length, clubs: added.clubs.length };
    if (isStored) {
      await tableImports.insert(tx, { ...table, counts });
      await clubs.insertAll(tx, added.clubs);
      await athletes.insertAll(tx, added.athletes);
      await this.entering.enterAll(tx, wanted, entering);
    }
    const rows = 'entered' in tried ? tried.entered.map(({ row }) => row) : [];
    return {
      ...NOTHING,
      ...{ names, isStored, counts, needsReason: late !== undefined },
      lines: shownLines(lines, names, new Map(rows.map((row, at) => [usable[at]!.line, row]))),
      problems: toldProblems(problems),
    };
  }

  private async announce({ lines }: ReadEntries, { organisationId }: Identity): Promise<void> {
    const ids = [...new Set(lines.map(({ competition }) => competition.id))];
    const rows = await this.database.read((at) => competitions.byIds(at, organisationId, ids));
    for (const { id, version } of rows) this.changes.announce({ competitionId: id, version });
  }
}

interface Asked {
  readonly input: EntriesImportInput;
  readonly source: CsvSource;
  readonly viewer: Identity;
  readonly table: Omit<NewTableImport, 'counts'>;
}

async function namesOf(at: Reads, lines: readonly EntryLine[], { input, source, viewer }: Asked) {
  const named = {
    source,
    persons: lines.flatMap(({ person }) => person ?? []),
    clubs: lines.map(({ line, values }) => ({ line, club: values.club })),
  };
  return readNames(at, viewer.organisationId, named, decisionsOf(input));
}

function withProblems(problems: readonly CsvProblem[]): ReadEntries {
  return { ...NOTHING, problems: toldProblems(problems) };
}

function replayed(isSame: boolean, counts: Readonly<Record<string, number>>): ReadEntries {
  if (!isSame) return { ...NOTHING, userErrors: [ID_REUSED] };
  return { ...NOTHING, counts: { ...NOTHING.counts, ...counts }, isReplay: true };
}

/** The line of the start list; its club is that of the table, else the athlete's on record. */
function newLine(
  { line, competition, values, person }: EntryLine,
  names: TableNames,
  organisationId: string,
) {
  const athlete = person && names.persons.of(line);
  const written = names.clubs.of(values.club);
  return {
    ...{ organisationId, id: uuidV7(), competitionId: competition.id, athleteId: athlete?.id ?? null },
    ...(values.club === null && athlete ? { clubId: athlete.clubId, listedClub: null } : written),
    ...{ listedName: values.listed_name, bib: values.bib, flight: values.flight },
    ...{ guest: values.guest === 'yes', implementGrams: values.implement_g },
    ...{ seedMark: values.seed_mark?.value ?? null, written: null, isUnmatched: false },
  };
}

function problemOf({ index, refusal }: EntryFault, usable: readonly EntryLine[]): CsvProblem {
  const { code, message, remedy, path } = refusal;
  const column = ENTRY_COLUMN_OF[path?.at(-1) ?? ''] ?? null;
  return { code, line: usable[index]!.line, column, message, remedy: remedy ?? '' };
}

function shownLines(
  lines: readonly EntryLine[],
  names: TableNames,
  rows: ReadonlyMap<number, CompetitorRow>,
): ShownEntry[] {
  const added = new Set(names.persons.added.map(({ id }) => id));
  return lines.map(({ line, competition, values }) => {
    const athlete = names.persons.of(line);
    const name = athlete ? `${athlete.givenName} ${athlete.familyName}` : (values.listed_name ?? '');
    const isNew = athlete !== null && added.has(athlete.id);
    return { line, competition, name, club: values.club, isNew, row: rows.get(line) ?? null };
  });
}
