import pg from 'pg';

/** The role that may add to the journal and to the archive and change neither. */
export const APPLICATION_ROLE = 'sectorline_app';

/**
 * The application's role if it is there, this login may take it on, and it can work in this database; otherwise
 * `null`, and the login's own rights serve (the journal's triggers hold all the same).
 */
export async function usableRole(url: string, connectionTimeoutMs: number): Promise<string | null> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: connectionTimeoutMs });
  client.on('error', () => undefined);
  await client.connect();
  try {
    const { rows } = await client.query<{ usable: boolean }>(
      `SELECT CASE
         WHEN NOT EXISTS (SELECT FROM pg_roles WHERE rolname = $1) OR to_regclass('journal_entry') IS NULL THEN false
         ELSE has_table_privilege($1, 'journal_entry', 'INSERT')
              AND pg_has_role(current_user, $1,
                    CASE WHEN current_setting('server_version_num')::int >= 160000 THEN 'SET' ELSE 'MEMBER' END)
       END AS usable`,
      [APPLICATION_ROLE],
    );
    return rows[0]?.usable === true ? APPLICATION_ROLE : null;
  } finally {
    await client.end();
  }
}
