import type pg from 'pg';

/** Where the copies of a competition go: SQL that gives `id`, `meet_id` and `title` of each. */
export type Wanted = string;

/**
 * Copies a competition with its start list and its journal, under new ids, past the triggers that guard recording.
 * Entries that name other entries would still name those of the original: a competition that has any is not copied.
 */
export async function copyCompetition(client: pg.Client, id: string, wanted: Wanted): Promise<void> {
  await client.query('BEGIN');
  await client.query('SET LOCAL session_replication_role = replica');
  await client.query(`CREATE TEMP TABLE copy ON COMMIT DROP AS ${wanted}`);
  await client.query(
    `CREATE TEMP TABLE line ON COMMIT DROP AS
       SELECT copy.id AS competition, competitor.id AS old, gen_random_uuid() AS new
         FROM copy, competitor WHERE competitor.competition_id = '${id}'`,
  );
  await client.query('CREATE INDEX ON line (competition, old)');
  for (const [table, from, changes] of COPIES) {
    const columns = (await columnsOf(client, table)).map((column) => changes[column] ?? `t.${column}`);
    await client.query(
      `INSERT INTO ${table} SELECT ${columns.join(', ')} FROM ${from} WHERE ${table === 'competition' ? 't.id' : 't.competition_id'} = '${id}'`,
    );
  }
  await client.query('COMMIT');
}

const COPIES: readonly [table: string, from: string, changes: Readonly<Record<string, string>>][] = [
  ['competition', 'competition AS t, copy', { id: 'copy.id', meet_id: 'copy.meet_id', title: 'copy.title' }],
  [
    'competitor',
    'competitor AS t JOIN line ON line.old = t.id',
    { id: 'line.new', competition_id: 'line.competition' },
  ],
  [
    'journal_entry',
    `journal_entry AS t CROSS JOIN copy
       LEFT JOIN line ON line.competition = copy.id AND line.old = (t.body ->> 'competitor')::uuid`,
    {
      competition_id: 'copy.id',
      entry_id: 'gen_random_uuid()',
      body: `CASE WHEN line.new IS NULL THEN t.body ELSE jsonb_set(t.body, '{competitor}', to_jsonb(line.new)) END`,
    },
  ],
];

export async function columnsOf(client: pg.Client, table: string): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT column_name AS name FROM information_schema.columns WHERE table_name = $1 ORDER BY ordinal_position`,
    [table],
  );
  return rows.map(({ name }) => name);
}

/** A global id as the API makes it, in SQL. */
export function globalId(kind: string, id: string): string {
  return `rtrim(translate(encode(convert_to('${kind}:' || ${id}, 'UTF8'), 'base64'), E'+/\\n', '-_'), '=')`;
}
