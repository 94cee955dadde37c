/**
 * The least that has to be done: bare fastify and `pg`, no rules, no rights, no checks. It writes the same rows in the
 * same transaction and answers the same fields as the API, so that what the API does beside that shows.
 */
import fastify from 'fastify';
import { createHash } from 'node:crypto';
import pg from 'pg';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { floorClubTable } from './floor-club-table.js';

const ACTOR = '00000000-0000-7000-8000-0000000000ac';

const pool = new pg.Pool({ connectionString: process.env['DATABASE_URL'], max: 10 });
const { rows } = await pool.query<{ id: string }>('SELECT id FROM organisation');
const organisationId = rows[0]!.id;
const server = fastify({ logger: false });

const LOCK = {
  name: 'lock',
  text: `SELECT version, status FROM competition WHERE organisation_id = $1 AND id = $2 FOR UPDATE`,
};
const APPEND = {
  name: 'append',
  text: `WITH counted AS (
      UPDATE competition SET last_sequence = last_sequence + 1, version = version + 1, status = 'open'
       WHERE organisation_id = $1 AND id = $2 RETURNING last_sequence, version
    )
    INSERT INTO journal_entry (organisation_id, competition_id, sequence, entry_id, kind, body, standing, verdict,
                               authority, actor, device, device_at, fingerprint)
    SELECT $1, $2, last_sequence, $3, 'attempt', $4, 'accepted', $5, 'official', $6, $7, NULL, $8 FROM counted
    RETURNING sequence, (SELECT version FROM counted) AS version, recorded_at`,
};
const VERDICT = JSON.stringify({ standing: 'accepted', notices: [] });

interface Recording {
  readonly competitionId: string;
  readonly competitorId: string;
  readonly entryId: string;
  readonly round: number;
  readonly outcome: string;
  readonly mark: string | null;
}

/** What the API keeps of a trial: whole centimetres, the bare id. */
function bodyOf({ competitorId, round, outcome, mark }: Recording): string {
  return JSON.stringify({
    kind: 'attempt',
    competitor: readGlobalId(competitorId)!.uuid,
    round,
    outcome: outcome.toLowerCase(),
    mark: mark === null ? null : Number(mark.replace('.', '')),
    wind: null,
    foul: null,
    protested: null,
    implementGrams: null,
  });
}

async function store(competition: string, entryId: string, body: string): Promise<any> {
  const fingerprint = createHash('sha256').update(competition).update(body).digest('hex');
  const client = await pool.connect();
  try {
    await client.query('BEGIN');
    await client.query({ ...LOCK, values: [organisationId, competition] });
    const values = [organisationId, competition, entryId, body, VERDICT, ACTOR, 'test official', fingerprint];
    const appended = await client.query({ ...APPEND, values });
    await client.query('COMMIT');
    return appended.rows[0];
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  } finally {
    client.release();
  }
}

server.post('/record', async (request) => {
  const { input } = (request.body as { variables: { input: Recording } }).variables;
  const row = await store(readGlobalId(input.competitionId)!.uuid, input.entryId, bodyOf(input));
  const entry = { id: input.entryId, sequence: row.sequence, standing: 'ACCEPTED', hold: null, notices: [] };
  return {
    data: {
      attemptRecord: {
        entry: { ...entry, recordedAt: row.recorded_at },
        isReplay: false,
        competition: { id: input.competitionId, version: row.version, status: 'OPEN' },
        userErrors: [],
      },
    },
  };
});

/** Tables of its own, made for this one question: everything that is shown is stored, even places and reasons. */
const TABLE = {
  name: 'table',
  text: `SELECT '{"data":{"competition":' || row_to_json(competition) || '}}' AS answer FROM (
    SELECT global_id AS id, title, (SELECT row_to_json(shown) FROM (
      SELECT bench_competition.version, (SELECT json_agg(line) FROM (
        SELECT competitor, bib, name, club, place, mark, reason, series
          FROM bench_line JOIN (
            SELECT bib, json_agg(trial ORDER BY bench_trial.round) AS series
              FROM bench_trial, LATERAL (SELECT round, cell, wind) AS trial
             WHERE competition_id = $1 GROUP BY bib) AS own USING (bib)
         WHERE competition_id = $1 ORDER BY at) AS line) AS rows) AS shown) AS "table"
      FROM bench_competition WHERE id = $1) AS competition`,
};

server.post('/table', async (request, reply) => {
  const { id } = (request.body as { variables: { id: string } }).variables;
  const { rows: answers } = await pool.query<{ answer: string }>({
    ...TABLE,
    values: [readGlobalId(id)!.uuid],
  });
  return reply.type('application/json; charset=utf-8').send(answers[0]!.answer);
});

server.post('/club-table', async (request) => {
  const { id } = (request.body as { variables: { id: string } }).variables;
  return floorClubTable(pool, id, readGlobalId(id)!.uuid);
});

/** An athlete's throws with their days, row by row; the newest fifty of them are given. */
const HISTORY = {
  name: 'history',
  text: `SELECT throw_id AS id, on_date::text AS "onDate", round, outcome, mark FROM practice_throw AS throw
    JOIN practice_session AS session ON session.organisation_id = $1 AND session.id = session_id
    WHERE throw.organisation_id = $1 AND athlete_id = $2
      AND NOT EXISTS (SELECT FROM practice_throw AS later WHERE later.organisation_id = $1 AND later.replaces_id = throw.id)
    ORDER BY on_date, session_id, round`,
};

server.post('/history', async (request) => {
  const { id } = request.body as { id: string };
  const { rows: throws } = await pool.query({ ...HISTORY, values: [organisationId, readGlobalId(id)!.uuid] });
  return {
    edges: throws
      .reverse()
      .slice(0, 50)
      .map((node: object) => ({ node })),
    hasNextPage: throws.length > 50,
  };
});

process.stdout.write(`${await server.listen({ host: '127.0.0.1', port: 0 })}\n`);
