import { randomUUID } from 'node:crypto';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { signedInPerson } from '../support/accounts.js';
import { onConnection } from '../support/database.js';
import { globalId as sqlGlobalId } from './competition-copies.js';
import type { Measure } from './measure.js';
import { absolute } from './measure.js';
import { p95, timeOf } from './latency.js';
import type { Stage } from './stage.js';

/** Throws of practice in the database, small and full; the full one when it is asked for: `BENCH_FULL=1`. */
const [FEW, MANY] = process.env['BENCH_FULL'] === '1' ? [10_000, 1_000_000] : [2_000, 20_000];
const THROWS_EACH = 200;
const OBSERVED_OF_TEN = 3;
const ASKED = 150;
const WARMING = 30;

const QUERY = `query History($id: ID!) { notebookAthlete(athleteId: $id) {
  history(first: 50) { edges { node { id onDate round outcome mark } } pageInfo { hasNextPage } }
} }`;

/**
 * The history of an athlete with two hundred throws, the newest fifty of them, asked by a coach one by one; against
 * the same rows over bare `pg`. First with few throws of others in the database, then with many.
 */
export async function measureHistory(stage: Stage): Promise<Measure[]> {
  const keeper = await signedInPerson(stage.api);
  const uuidOf = (id: string): string => readGlobalId(id)!.uuid;
  const few = await fill(stage, uuidOf(keeper.id), FEW);
  const atFirst = await ask(stage, few);
  const many = await fill(stage, uuidOf(keeper.id), MANY - FEW);
  const [ours, floor] = [await ask(stage, many), await bare(stage, many)];
  return [
    absolute(`history of one in ${FEW}`, 'ms p95', [atFirst], null),
    absolute(`history of one in ${MANY}`, 'ms p95', [ours], null),
    absolute('history, bare SQL over pg', 'ms p95', [floor], null),
    absolute('history against bare SQL', '×', [ours / floor], 1.5),
    absolute(`history, ${MANY} against ${FEW} throws`, '×', [ours / atFirst], 1.3),
  ];
}

/** Adds athletes with two hundred throws each, three in ten of them looked at; gives some of the ids. */
async function fill({ databaseUrl }: Stage, personId: string, throws: number): Promise<string[]> {
  return onConnection(databaseUrl, async (client) => {
    const tag = randomUUID().slice(0, 8);
    await client.query(`
      INSERT INTO athlete (organisation_id, id, given_name, family_name, sex)
      SELECT o.id, gen_random_uuid(), 'Given' || n, 'Bench ${tag}', 'W'
        FROM organisation AS o, generate_series(1, ${Math.ceil(throws / THROWS_EACH)}) AS n`);
    await client.query(
      `INSERT INTO practice_session (organisation_id, id, on_date, place, kept_by)
       SELECT o.id, gen_random_uuid(), date '2024-01-01' + 7 * n, 'Bench ${tag}', $1 FROM organisation AS o, generate_series(1, 20) AS n`,
      [personId],
    );
    await client.query(
      `INSERT INTO practice_throw (organisation_id, id, throw_id, session_id, athlete_id, event, variant, implement_grams, round,
                                   outcome, mark, is_measured, effort_percent, voided_on_purpose, styles, is_annulled, logged_by, fingerprint)
       SELECT made.organisation_id, made.id, made.id, made.session_id, made.athlete_id, 'discus', 'full-turn', 1000, made.round,
              'valid', 3000 + (random() * 400)::integer, true, 95, false, '[]', false, $1, repeat('ab', 32)
         FROM (SELECT athlete.organisation_id, gen_random_uuid() AS id, session.id AS session_id, athlete.id AS athlete_id, round
                 FROM athlete, practice_session AS session, generate_series(1, ${THROWS_EACH / 20}) AS round
                WHERE family_name = 'Bench ${tag}' AND session.place = 'Bench ${tag}') AS made`,
      [personId],
    );
    await client.query(
      `INSERT INTO observation (organisation_id, id, athlete_id, event, practice_throw_id, observer_id, observed_at, method, mark_known,
                                scope, marks, edition, is_withdrawn, fingerprint)
       SELECT throw.organisation_id, gen_random_uuid(), athlete_id, 'discus', throw.id, $1, now(), 'live', false,
              '["DT-04","DT-14"]', CASE WHEN random() < 0.4 THEN '[{"code":"DT-14","severity":2,"sure":true,"causedBy":null}]' ELSE '[]' END::jsonb,
              '1', false, repeat('ab', 32)
         FROM practice_throw AS throw JOIN athlete ON athlete.id = athlete_id
        WHERE family_name = 'Bench ${tag}' AND round <= ${OBSERVED_OF_TEN}`,
      [personId],
    );
    await client.query('ANALYZE');
    const { rows } = await client.query<{ id: string }>(
      `SELECT ${sqlGlobalId('Athlete', 'id')} AS id FROM athlete WHERE family_name = 'Bench ${tag}' ORDER BY random() LIMIT 10`,
    );
    return rows.map(({ id }) => id);
  });
}

async function ask({ api }: Stage, ids: readonly string[]): Promise<number> {
  const { accessToken } = await signedInPerson(
    api,
    ids.map((on) => ({ role: 'COACH', on })),
  );
  const times: number[] = [];
  for (let at = 0; at < ASKED + WARMING; at += 1) {
    const ms = await timeOf(async () => {
      const { notebookAthlete } = await api.data(QUERY, { id: ids[at % ids.length]! }, accessToken);
      if (notebookAthlete.history.edges.length !== 50) throw new Error('A page is not whole.');
    });
    if (at >= WARMING) times.push(ms);
  }
  return p95(times);
}

/** The same rows, as `pg` gives them to a bare server. */
async function bare({ floor }: Stage, ids: readonly string[]): Promise<number> {
  const times: number[] = [];
  for (let at = 0; at < ASKED + WARMING; at += 1) {
    const ms = await timeOf(async () => {
      const response = await fetch(`${floor.url}/history`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ id: ids[at % ids.length]! }),
      });
      const { edges } = (await response.json()) as { edges: unknown[] };
      if (edges.length !== 50) throw new Error('A page is not whole.');
    });
    if (at >= WARMING) times.push(ms);
  }
  return p95(times);
}
