import type pg from 'pg';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { discusSheet, staffedCompetition } from '../support/circle.js';
import { onConnection } from '../support/database.js';
import { plannedTrials, seriesOf } from '../support/planned-trials.js';
import { COMPETITORS, ROUNDS, SCALE } from './scale.js';
import type { Stage } from './stage.js';

export const TABLE_QUERY = `query Table($id: ID!) { competition(id: $id) { id title table { version rows {
  competitor bib name club place mark reason series { round cell wind }
} } } }`;

/** Fills the database with finished competitions, for the API and for the floor. Gives the ids of some, as the API shows them. */
export async function storeCompetitions(stage: Stage, wanted: number): Promise<string[]> {
  const first = await importOne(stage);
  const shown = (await stage.api.data(TABLE_QUERY, { id: first })).competition;
  const { uuid } = readGlobalId(first)!;
  return onConnection(stage.databaseUrl, async (client) => {
    await copyCompetition(client, uuid, SCALE.stored - 1);
    await makeFloorTables(client, uuid, shown);
    const { rows } = await client.query<{ id: string }>(
      'SELECT global_id AS id FROM bench_competition ORDER BY id LIMIT $1',
      [wanted],
    );
    return rows.map(({ id }) => id);
  });
}

async function importOne(stage: Stage): Promise<string> {
  const series = seriesOf(plannedTrials(COMPETITORS, ROUNDS, 1));
  const competitors = Object.entries(series).map(([bib, cells]) => ({
    bib,
    name: `Given${bib} Family${bib}`,
    club: `Club ${Number(bib) % 7}`,
    series: cells,
  }));
  const sheet = discusSheet(COMPETITORS, {
    competitors,
    plan: { rounds: ROUNDS, cuts: [], reorderAfter: [] },
  });
  return (await staffedCompetition(stage.api, stage.meet, sheet)).id;
}

/** Copies a competition with its start list and its journal, under new ids, past the triggers that guard recording. */
async function copyCompetition(client: pg.Client, id: string, copies: number): Promise<void> {
  await client.query('BEGIN');
  await client.query('SET LOCAL session_replication_role = replica');
  await client.query(
    `CREATE TEMP TABLE copy ON COMMIT DROP AS SELECT gen_random_uuid() AS id, n FROM generate_series(1, ${copies}) AS n`,
  );
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
  await client.query('ANALYZE');
}

/** Begins the title of every copy. */
const COPY = 'Copy';

const COPIES: readonly [table: string, from: string, changes: Readonly<Record<string, string>>][] = [
  ['competition', 'competition AS t, copy', { id: 'copy.id', title: `'${COPY} ' || copy.n` }],
  [
    'competitor',
    'competitor AS t JOIN line ON line.old = t.id',
    { id: 'line.new', competition_id: 'line.competition' },
  ],
  [
    'journal_entry',
    `journal_entry AS t JOIN line ON line.old = (t.body ->> 'competitor')::uuid`,
    {
      competition_id: 'line.competition',
      entry_id: 'gen_random_uuid()',
      body: `jsonb_set(t.body, '{competitor}', to_jsonb(line.new))`,
    },
  ],
];

async function columnsOf(client: pg.Client, table: string): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT column_name AS name FROM information_schema.columns WHERE table_name = $1 ORDER BY ordinal_position`,
    [table],
  );
  return rows.map(({ name }) => name);
}

/** A global id as the API makes it, in SQL. */
function globalId(kind: string, id: string): string {
  return `rtrim(translate(encode(convert_to('${kind}:' || ${id}, 'UTF8'), 'base64'), E'+/\\n', '-_'), '=')`;
}

/** Everything that is shown of every competition, in the form that is fastest to read. */
async function makeFloorTables(client: pg.Client, id: string, shown: any): Promise<void> {
  const rows: any[] = shown.table.rows.map((row: object, at: number) => ({ ...row, at }));
  const trials = rows.flatMap(({ bib, series }) => series.map((trial: object) => ({ ...trial, bib })));
  await client.query(
    `CREATE TABLE bench_competition AS SELECT id, ${globalId('Competition', 'id')} AS global_id, title, version
       FROM competition WHERE id = '${id}' OR title LIKE '${COPY} %'`,
  );
  await client.query(
    `CREATE TABLE bench_line AS
       SELECT c.id AS competition_id, ${globalId('Competitor', 'competitor.id')} AS competitor, r.*
         FROM bench_competition AS c, competitor, json_to_recordset($1)
           AS r(at int, bib text, name text, club text, place int, mark text, reason text)
        WHERE competitor.competition_id = c.id AND competitor.bib = r.bib`,
    [JSON.stringify(rows)],
  );
  await client.query(
    `CREATE TABLE bench_trial AS SELECT c.id AS competition_id, t.* FROM bench_competition AS c,
       json_to_recordset($1) AS t(bib text, round int, cell text, wind text)`,
    [JSON.stringify(trials)],
  );
  await client.query('ALTER TABLE bench_competition ADD PRIMARY KEY (id)');
  await client.query('ALTER TABLE bench_line ADD PRIMARY KEY (competition_id, at)');
  await client.query('ALTER TABLE bench_trial ADD PRIMARY KEY (competition_id, bib, round)');
  await client.query('ANALYZE');
}
