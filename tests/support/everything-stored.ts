import { onConnection } from './database.js';

/** Every row of every table, in one number. */
export async function everythingStored(databaseUrl: string): Promise<string> {
  return onConnection(databaseUrl, async (client) => {
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT table_name AS name FROM information_schema.tables
        WHERE table_schema = current_schema() AND table_type = 'BASE TABLE' ORDER BY 1`,
    );
    const rowsOf = tables.map(({ name }) => `SELECT '${name}' || t::text AS line FROM ${name} AS t`);
    const { rows } = await client.query<{ digest: string }>(
      `SELECT md5(string_agg(line, E'\\n' ORDER BY line)) AS digest FROM (${rowsOf.join(' UNION ALL ')}) AS lines`,
    );
    return rows[0]!.digest;
  });
}
