import { violationOf, type Tx } from '#persistence';
import { isDeepStrictEqual } from 'node:util';
import { ID_REUSED } from '../errors/outcomes.js';
import type { UserError } from '../errors/user-error.types.js';
import type { Database } from './database.js';

export type Created<Row> =
  | { readonly row: Row; readonly replayed: boolean }
  | { readonly refusal: UserError };

export interface Creation<Row extends { readonly id: string }, New extends Partial<Row>> {
  /** What the client asked for; a row of that id with the same values is the same request, sent again. */
  readonly wanted: New & { readonly id: string };
  readonly find: (tx: Tx, id: string) => Promise<Row | null>;
  /** Checks what the row names and stores it. */
  readonly insert: (tx: Tx) => Promise<UserError | null>;
}

/**
 * Creates a row under an id that the client may have made, so that a request whose answer was lost can be sent again:
 * it is answered with the row that it made. The same id with other content is refused.
 */
export async function createOnce<Row extends { readonly id: string }, New extends Partial<Row>>(
  database: Database,
  creation: Creation<Row, New>,
): Promise<Created<Row>> {
  try {
    return await attempt(database, creation);
  } catch (error) {
    // Two of the same at once: the one that came second finds the row now.
    const violation = violationOf(error);
    if (violation?.kind !== 'unique') throw error;
    return attempt(database, creation);
  }
}

function attempt<Row extends { readonly id: string }, New extends Partial<Row>>(
  database: Database,
  { wanted, find, insert }: Creation<Row, New>,
): Promise<Created<Row>> {
  return database.write(async (tx) => {
    const there = await find(tx, wanted.id);
    if (there) return isSame(there, wanted) ? { row: there, replayed: true } : { refusal: ID_REUSED };
    const refused = await insert(tx);
    if (refused) return { refusal: refused };
    const row = await find(tx, wanted.id);
    if (!row) throw new Error('What was stored just now is not there.');
    return { row, replayed: false };
  });
}

function isSame(there: object, wanted: object): boolean {
  return Object.entries(wanted).every(([key, value]) =>
    isDeepStrictEqual((there as Record<string, unknown>)[key], value),
  );
}
