import { check, type Report } from '../../apps/api/src/checking/check.js';
import type { SecondCount } from '../../apps/api/src/checking/check-competition.js';
import type { Aspect } from '../../apps/api/src/checking/finding.js';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { referenceResult } from '../reference/result.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { onConnection } from '../support/database.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const second = referenceResult;

/** Three throwers, two rounds, one mark corrected, the result signed. */
async function signed(): Promise<{ circle: Circle; id: string }> {
  const circle = await Circle.open(api, discusSheet(3, { plan: { rounds: 2, cuts: [], reorderAfter: [] } }));
  await circle.recordCard(['58.10', '57.02'], ['57.44', '58.10'], ['X', 'X']);
  const { version } = await circle.read();
  await circle.enter('competitionSignOff', { expectedVersion: version }, circle.referee);
  return { circle, id: readGlobalId(circle.competition.id)!.uuid };
}

function look(circle: Circle, secondCount: SecondCount = second): Promise<Report> {
  return check(api.database, {
    organisationId: api.organisationId,
    meetId: null,
    secondCount,
    live: { url: api.url, token: circle.referee },
  });
}

/** As somebody could who has the whole database: past triggers and foreign keys. */
async function tamper(statement: string, values: unknown[] = []): Promise<void> {
  await onConnection(api.databaseUrl, async (client) => {
    await client.query(`SET session_replication_role = replica`);
    const { rowCount } = await client.query(statement, values);
    if (rowCount === 0) throw new Error('Nothing was tampered with.');
  });
}

function foundOf({ findings }: Report, place: string): Aspect[] {
  return findings.filter(({ where }) => where.includes(place)).map(({ aspect }) => aspect);
}

const FIRST_BODY = `UPDATE journal_entry SET body = jsonb_set(body, '{mark}', '5900')
  WHERE competition_id = $1 AND sequence = 1`;

describe('what is stored', () => {
  it('is as it must be after a competition, and everything was looked at', async () => {
    const { circle } = await signed();
    const report = await look(circle);
    expect(report.findings).toEqual([]);
    expect(report.looked.size).toBe(9);
    expect(report.competitions).toBe(1);
  });

  it.each<[Aspect, string]>([
    ['sequence', `DELETE FROM journal_entry WHERE competition_id = $1 AND sequence = 2`],
    ['briefs', FIRST_BODY],
    ['sealed', FIRST_BODY],
    ['live', FIRST_BODY],
    [
      'briefs',
      `UPDATE journal_entry SET trial = replace(trial, ',5810,', ',5710,') WHERE competition_id = $1 AND sequence = 1`,
    ],
    ['sealed', `UPDATE competition SET status = 'open' WHERE id = $1`],
    [
      'archives',
      `UPDATE official_result SET result = jsonb_set(result, '{results,0,place}', '2') WHERE competition_id = $1`,
    ],
    [
      'sealed',
      `UPDATE official_result SET result = jsonb_set(result, '{results,0,mark}', '"58.11"') WHERE competition_id = $1`,
    ],
  ])('is found out where it is not: %s (%s)', async (aspect, statement) => {
    const { circle, id } = await signed();
    await circle.read();
    await tamper(statement, [id]);
    expect(foundOf(await look(circle), id)).toContain(aspect);
  });

  it('is found out where an entry is about one that is not there', async () => {
    const { circle, id } = await signed();
    const reopened = await circle.enter(
      'competitionReopen',
      { reason: 'A line was swapped.' },
      circle.director,
    );
    expect(reopened.userErrors).toEqual([]);
    await tamper(
      `UPDATE journal_entry SET body = jsonb_build_object('kind', 'reversal', 'entry', gen_random_uuid(), 'reason', 'x'),
              kind = 'reversal' WHERE competition_id = $1 AND kind = 'reopening'`,
      [id],
    );
    const { findings } = await look(circle);
    expect(findings.map(({ aspect }) => aspect)).toContain('reasons');
  });

  it('is found out where a parent is missing and where a guard is off', async () => {
    const { circle, id } = await signed();
    await tamper(`UPDATE competitor SET club_id = gen_random_uuid() WHERE competition_id = $1`, [id]);
    expect(foundOf(await look(circle), 'competitor')).toEqual(['orphans']);
    await tamper(`UPDATE competitor SET club_id = NULL WHERE competition_id = $1`, [id]);
    await onConnection(api.databaseUrl, (client) =>
      client.query(`ALTER TABLE journal_entry DISABLE TRIGGER journal_entry_insert_only`),
    );
    const report = await look(circle);
    await onConnection(api.databaseUrl, (client) =>
      client.query(`ALTER TABLE journal_entry ENABLE TRIGGER journal_entry_insert_only`),
    );
    expect(foundOf(report, 'journal_entry')).toEqual(['guards']);
  });

  it('is found out where a second count differs', async () => {
    const { circle, id } = await signed();
    const otherwise: SecondCount = (sheet) => {
      const { results } = referenceResult(sheet) as { results: object[] };
      return { results: results.toReversed() };
    };
    expect(foundOf(await look(circle, otherwise), id)).toEqual(['secondCount']);
  });
});
