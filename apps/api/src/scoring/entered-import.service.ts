import { enteredResults, meets, violationOf, type EnteredResultRow, type Tx } from '#persistence';
import { Injectable } from '@nestjs/common';
import { isDeepStrictEqual } from 'node:util';
import { toldProblems } from '../platform/csv/csv-problem.js';
import { csvSourceOf } from '../platform/csv/csv.inputs.js';
import { csvFault, CSV_MISSING } from '../platform/csv/csv.types.js';
import { Database } from '../platform/database/database.js';
import { ID_REUSED, notFound } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { enteredAlready, enteredTable, resultId, type ReadResult } from './entered-csv.js';
import type { EnteredResultsImportInput } from './entered-results.inputs.js';
import { countingOf } from './entered-view.js';

export type ResultsImported =
  | { readonly rows: readonly EnteredResultRow[]; readonly replayed: boolean }
  | { readonly refusals: UserError[] };

/** Results of running events and relays, a table at a time. */
@Injectable()
export class EnteredImportService {
  constructor(private readonly database: Database) {}

  /** All of a table in one transaction, or nothing and every problem of it. */
  async import(input: EnteredResultsImportInput, viewer: Identity): Promise<ResultsImported> {
    const { meetId } = input;
    const authority = viewer.requireCapacity({ id: meetId, meetId, callingGroupId: null });
    const source = csvSourceOf(input.csv);
    if (source === null) return { refusals: [CSV_MISSING] };
    const table = enteredTable(source);
    if ('problems' in table) {
      return { refusals: toldProblems(table.problems).map((one) => csvFault(one, ['csv'])) };
    }
    const importId = input.id ?? uuidV7();
    const rows = table.results.map(
      ({ result }, at): EnteredResultRow => ({
        organisationId: viewer.organisationId,
        id: resultId(importId, at),
        meetId,
        ...result,
        replacesId: null,
        reason: null,
        authority,
        enteredBy: viewer.holder ?? '',
        enteredAt: new Date().toISOString(),
      }),
    );
    try {
      return await this.database.write((tx) => enter(tx, table.results, rows, input.isDryRun));
    } catch (error) {
      // The same table twice at once: the one that came second is answered like any that is sent again.
      if (violationOf(error)?.kind !== 'unique') throw error;
      return this.database.write((tx) => enter(tx, table.results, rows, input.isDryRun));
    }
  }
}

async function enter(
  tx: Tx,
  read: readonly ReadResult[],
  rows: readonly EnteredResultRow[],
  isDryRun: boolean,
): Promise<ResultsImported> {
  const { organisationId, meetId } = rows[0]!;
  // Nobody else enters a table at the meet meanwhile.
  if (!(await meets.lock(tx, organisationId, meetId))) return { refusals: [notFound('meet', ['meetId'])] };
  const first = await enteredResults.find(tx, organisationId, rows[0]!.id);
  if (first) return replayOf(tx, rows);
  const counting = countingOf(await enteredResults.ofMeet(tx, organisationId, meetId));
  const twice = read.filter(({ result }) => counting.some((one) => isOfSame(one, result)));
  if (twice.length > 0) return { refusals: twice.map((one) => csvFault(enteredAlready(one), ['csv'])) };
  if (isDryRun) return { rows, replayed: false };
  for (const { enteredAt: _, ...row } of rows) await enteredResults.insert(tx, row);
  return { rows: await stored(tx, rows), replayed: false };
}

async function replayOf(tx: Tx, rows: readonly EnteredResultRow[]): Promise<ResultsImported> {
  const there = await stored(tx, rows);
  const isSame =
    there.length === rows.length &&
    there.every((row, at) => isDeepStrictEqual(contentOf(row), contentOf(rows[at]!)));
  return isSame ? { rows: there, replayed: true } : { refusals: [ID_REUSED] };
}

async function stored(tx: Tx, rows: readonly EnteredResultRow[]): Promise<EnteredResultRow[]> {
  const found: EnteredResultRow[] = [];
  for (const { organisationId, id } of rows) {
    const row = await enteredResults.find(tx, organisationId, id);
    if (row) found.push(row);
  }
  return found;
}

function contentOf({ meetId, title, isRelay, categorySex, categoryAge, lines }: EnteredResultRow): object {
  return { meetId, title, isRelay, categorySex, categoryAge, lines };
}

function isOfSame(one: EnteredResultRow, other: ReadResult['result']): boolean {
  const { title, categorySex, categoryAge } = other;
  return one.title === title && one.categorySex === categorySex && one.categoryAge === categoryAge;
}
