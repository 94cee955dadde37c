import type pg from 'pg';
import { managerOf, type Reads } from './transaction.js';

/** SQL that is run so often that each connection keeps it parsed and planned, under a name of its own. */
export interface Statement {
  readonly name: string;
  readonly text: string;
}

/**
 * Runs a statement on the transaction's own connection, past TypeORM: the recording of an attempt is short enough
 * for the difference to count (measured: half of the time it takes in this process). Throws the driver's error.
 */
export async function execute<Row extends pg.QueryResultRow>(
  at: Reads,
  { name, text }: Statement,
  values: unknown[],
): Promise<Row[]> {
  const runner = managerOf(at).queryRunner;
  if (runner === undefined || runner.isReleased) throw new Error('The transaction is over.');
  const connection = (await runner.connect()) as pg.PoolClient;
  const { rows } = await connection.query<Row>({ name, text, values });
  return rows;
}

/** A select list that names columns as rows do: `given_name AS "givenName"`. */
export function columns(...names: readonly string[]): string {
  return names
    .map((name) => `${name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)} AS "${name}"`)
    .join(', ');
}
