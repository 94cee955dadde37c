import {
  athletes,
  clubs,
  meets,
  startingMarks,
  violationOf,
  type NewStartingMark,
  type StartingMarkRow,
  type Tx,
} from '#persistence';
import { parseMark } from '#rules';
import { Injectable } from '@nestjs/common';
import { csvSourceOf } from '../platform/csv/csv.inputs.js';
import { CSV_MISSING, csvFault } from '../platform/csv/csv.types.js';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { ID_REUSED, notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { startingTable, type StartingLine } from './starting-csv.js';
import type {
  StartingMarkAddInput,
  StartingMarksImportInput,
  StartingMarkWithdrawInput,
} from './starting-marks.inputs.js';
import { identityOf, startingProblems, type StartingValues } from './starting-problems.js';

type Wanted = Omit<NewStartingMark, 'enteredBy'>;
export type Added = Created<StartingMarkRow> | { readonly refusals: UserError[] };
export type Imported =
  | { readonly rows: readonly NewStartingMark[]; readonly replayed: boolean }
  | { readonly refusals: UserError[] };

/** The marks with which lists begin. */
@Injectable()
export class StartingMarksService {
  constructor(private readonly database: Database) {}

  /** Adds a mark, or one that replaces another; all problems at once. */
  async add(input: StartingMarkAddInput, viewer: Identity): Promise<Added> {
    requireKeeperOf(input.meetId ?? null, viewer);
    const { organisationId } = viewer;
    const values = valuesOf(input);
    const refusals = [
      ...reasonProblems(!!input.replacesId, !!input.reason),
      ...startingProblems(values, today()).map(({ field, ...problem }) =>
        refusal({ ...problem, path: [field] }),
      ),
    ];
    if (refusals.length > 0) return { refusals };
    const wanted: Wanted = {
      ...{ organisationId, id: input.id ?? uuidV7(), ...values, counts: true },
      ...{ replacesId: input.replacesId ?? null, reason: input.reason ?? null },
      ...{ importId: null, importLine: null },
    };
    return this.create(wanted, viewer, async (tx) => {
      const unknown = await unknownOwner(tx, wanted);
      return unknown ?? (wanted.replacesId === null ? null : replacedProblem(tx, viewer, wanted.replacesId));
    });
  }

  /** Takes a mark back: a row that says so, and what it took back. */
  async withdraw({ id, replacesId, reason }: StartingMarkWithdrawInput, viewer: Identity): Promise<Added> {
    viewer.requireKeeper();
    const { organisationId } = viewer;
    const before = await this.database.read((at) => startingMarks.find(at, organisationId, replacesId));
    if (!before) return { refusal: notFound('starting mark', ['replacesId']) };
    const { enteredAt: _, enteredBy: __, ...said } = before;
    const wanted: Wanted = {
      ...{ ...said, id: id ?? uuidV7(), counts: false, replacesId, reason },
      ...{ importId: null, importLine: null },
    };
    return this.create(wanted, viewer, (tx) => replacedProblem(tx, viewer, replacesId));
  }

  private create(
    wanted: Wanted,
    viewer: Identity,
    check: (tx: Tx) => Promise<UserError | null>,
  ): Promise<Created<StartingMarkRow>> {
    return createOnce<StartingMarkRow, Wanted>(this.database, {
      wanted,
      find: (tx, id) => startingMarks.find(tx, wanted.organisationId, id),
      insert: async (tx) => {
        const refused = await check(tx);
        if (refused) return refused;
        await startingMarks.insert(tx, [{ ...wanted, enteredBy: viewer.holder! }]);
        return null;
      },
    });
  }

  /** All of a table in one transaction, or nothing and every problem of it. */
  async import(input: StartingMarksImportInput, viewer: Identity): Promise<Imported> {
    requireKeeperOf(input.meetId ?? null, viewer);
    const source = csvSourceOf(input.csv);
    if (source === null) return { refusals: [CSV_MISSING] };
    const { organisationId } = viewer;
    const importId = input.id ?? uuidV7();
    const context = {
      organisationId,
      meetId: input.meetId ?? null,
      clubId: input.clubId ?? null,
      importId,
      today: today(),
    };
    try {
      return await this.database.write(async (tx): Promise<Imported> => {
        const there = await startingMarks.ofImport(tx, organisationId, importId);
        const unknown = await unknownOwner(tx, { ...context, athleteId: null });
        if (unknown) return { refusals: [unknown] };
        const table = await startingTable(tx, source, context);
        if ('problems' in table) {
          return { refusals: table.problems.map((one) => csvFault(one, ['csv'])) };
        }
        if (there.length > 0) return replayOf(there, table.lines);
        const rows = table.lines.map((line) => importedRow(line, importId, viewer));
        if (!input.isDryRun) await startingMarks.insert(tx, rows);
        return { rows, replayed: false };
      });
    } catch (error) {
      // The same table twice at once: the one that came second is answered like any that is sent again.
      if (violationOf(error)?.constraint !== 'starting_mark_imported_once') throw error;
      return this.import(input, viewer);
    }
  }

  /** Those that count in the lists of a club or a meet, for those who keep them. */
  async of(
    owner: { readonly clubId: string } | { readonly meetId: string },
    viewer: Identity,
  ): Promise<StartingMarkRow[]> {
    viewer.requireKeeper();
    const clubIds = 'clubId' in owner ? [owner.clubId] : [];
    const meetIds = 'meetId' in owner ? [owner.meetId] : [];
    return this.database.read((at) =>
      startingMarks.counting(at, viewer.organisationId, { clubs: clubIds, meets: meetIds, athletes: [] }),
    );
  }
}

function requireKeeperOf(meetId: string | null, viewer: Identity): void {
  if (meetId === null) viewer.requireKeeper();
  else viewer.requireDirector(meetId);
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}

function valuesOf(input: StartingMarkAddInput): StartingValues {
  const mark = parseMark(input.mark)!;
  return {
    clubId: input.clubId ?? null,
    meetId: input.meetId ?? null,
    athleteId: input.athleteId ?? null,
    event: input.event,
    unit: mark.unit,
    mark: mark.value,
    wind: input.wind ?? null,
    indoor: input.isIndoor,
    implementGrams: input.implementGrams ?? null,
    sex: input.sex,
    age: input.age,
    onDate: input.onDate,
    place: input.place ?? null,
  };
}

function importedRow({ line, values }: StartingLine, importId: string, viewer: Identity): NewStartingMark {
  return {
    ...{ organisationId: viewer.organisationId, id: uuidV7(), ...values, counts: true },
    ...{ replacesId: null, reason: null, importId, importLine: line, enteredBy: viewer.holder! },
  };
}

function replayOf(there: readonly StartingMarkRow[], lines: readonly StartingLine[]): Imported {
  const isSame =
    there.length === lines.length &&
    there.every((row, at) => {
      const { line, values } = lines[at]!;
      return row.importLine === line && row.place === values.place && identityOf(row) === identityOf(values);
    });
  return isSame ? { rows: there, replayed: true } : { refusals: [ID_REUSED] };
}

async function unknownOwner(
  tx: Tx,
  {
    organisationId,
    clubId,
    meetId,
    athleteId,
  }: Pick<Wanted, 'organisationId' | 'clubId' | 'meetId' | 'athleteId'>,
): Promise<UserError | null> {
  if (clubId !== null && !(await clubs.find(tx, organisationId, clubId))) return notFound('club', ['clubId']);
  if (meetId !== null && !(await meets.find(tx, organisationId, meetId))) return notFound('meet', ['meetId']);
  if (athleteId !== null && !(await athletes.find(tx, organisationId, athleteId))) {
    return notFound('athlete', ['athleteId']);
  }
  return null;
}

/** Throws FORBIDDEN when what is replaced is of a meet that the viewer does not direct. */
async function replacedProblem(tx: Tx, viewer: Identity, id: string): Promise<UserError | null> {
  const replaced = await startingMarks.find(tx, viewer.organisationId, id);
  if (!replaced?.counts) return notFound('starting mark', ['replacesId']);
  requireKeeperOf(replaced.meetId, viewer);
  if (!(await startingMarks.replacementOf(tx, viewer.organisationId, id))) return null;
  return refusal({
    code: 'REPLACED_ALREADY',
    path: ['replacesId'],
    message: 'Another one has replaced this mark.',
    remedy: 'Read the starting marks, and replace the one that counts now.',
  });
}

function reasonProblems(replaces: boolean, hasReason: boolean): UserError[] {
  if (replaces === hasReason) return [];
  return [
    replaces
      ? refusal({
          code: 'REASON_MISSING',
          path: ['reason'],
          message: 'A mark is not replaced without a reason.',
          remedy: 'Say why.',
        })
      : refusal({
          code: 'REASON_NOT_EXPECTED',
          path: ['reason'],
          message: 'Nothing is replaced.',
          remedy: 'Leave the reason out, or name the mark that this one replaces.',
        }),
  ];
}
