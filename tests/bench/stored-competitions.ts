import type pg from 'pg';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { discusSheet, staffedCompetition } from '../support/circle.js';
import { onConnection } from '../support/database.js';
import { plannedTrials, seriesOf } from '../support/planned-trials.js';
import { copyCompetition, globalId } from './competition-copies.js';
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
    await copyCompetition(client, uuid, copiesOf(uuid, SCALE.stored - 1));
    await client.query('ANALYZE');
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

/** Begins the title of every copy. */
const COPY = 'Copy';

function copiesOf(id: string, copies: number): string {
  return `SELECT gen_random_uuid() AS id, meet_id, '${COPY} ' || n AS title
            FROM competition, generate_series(1, ${copies}) AS n WHERE id = '${id}'`;
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
