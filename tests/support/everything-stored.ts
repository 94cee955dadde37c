import { onConnection } from './database.js';

/**
 * How many rows each table has and which transaction wrote to it last: whatever is stored, changed or taken away changes
 * it.
 */
export async function everythingStored(databaseUrl: string): Promise<string> {
  return onConnection(databaseUrl, async (client) => {
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT table_name AS name FROM information_schema.tables
        WHERE table_schema = current_schema() AND table_type = 'BASE TABLE' ORDER BY 1`,
    );
    const rowsOf = tables.map(
      ({ name }) =>
        `SELECT '${name} ' || count(*) || ' ' || coalesce(max(xmin::text::bigint), 0) AS line FROM ${name}`,
    );
    const { rows } = await client.query<{ digest: string }>(
      `SELECT string_agg(line, ', ') AS digest FROM (${rowsOf.join(' UNION ALL ')}) AS lines`,
    );
    return rows[0]!.digest;
  });
}
