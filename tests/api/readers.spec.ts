import { buildClientSchema, getIntrospectionQuery, isObjectType } from 'graphql';
import { KEPT_FIELDS, NOT_KEPT_BELOW } from '../../apps/api/src/platform/graphql/kept-answers.plugin.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { plannedTrials } from '../support/planned-trials.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const TABLE = `query ($id: ID!) { competition(id: $id) { version table { version rows { bib name mark series { cell } } } } }`;

async function tableFor(circle: Circle, token: string | null = null): Promise<any> {
  return (await api.data(TABLE, { id: circle.competition.id }, token)).competition;
}

describe('readers of a table', () => {
  it('find what was recorded as soon as the recorder has the answer', async () => {
    const circle = await Circle.open(api, discusSheet(6));
    for (const { bib, round, cell } of plannedTrials(6, 6, 1).slice(0, 18)) {
      await tableFor(circle);
      const { competition } = await circle.record(Number(bib), round, cell);
      const { version, table } = await tableFor(circle);
      expect([version, table.version]).toEqual([competition.version, competition.version]);
      const { series } = table.rows.find((row: any) => row.bib === bib);
      expect(series.at(-1)).toEqual({ cell });
    }
  });

  it('never see a version older than one that was acknowledged before they asked', async () => {
    const circle = await Circle.open(api, discusSheet(6));
    let acknowledged = 0;
    let isOver = false;
    const backwards: unknown[] = [];
    const readers = Array.from({ length: 8 }, async () => {
      let seen = 0;
      while (!isOver) {
        const atLeast = Math.max(seen, acknowledged);
        const { version, table } = await tableFor(circle);
        if (table.version < atLeast || version !== table.version) backwards.push({ version, atLeast, table });
        seen = table.version;
      }
    });
    for (const { bib, round, cell } of plannedTrials(6, 6, 2).slice(0, 18))
      acknowledged = (await circle.record(Number(bib), round, cell)).competition.version;
    isOver = true;
    await Promise.all(readers);
    expect(backwards).toEqual([]);
  });

  it('see of a name what is theirs to see, whoever asked before', async () => {
    const competitors = [{ bib: '1', name: 'Odalys Thornwick' }];
    const circle = await Circle.open(api, discusSheet(1, { competitors }));
    const nameFor = async (token: string | null) => (await tableFor(circle, token)).table.rows[0].name;
    for (let time = 0; time < 3; time += 1) {
      expect(await nameFor(null)).toBe('O. T.');
      expect(await nameFor(circle.official)).toBe('Odalys Thornwick');
    }
  });

  it('are not told by yesterday’s answer that a competition is not there', async () => {
    const meetCreate = await api.data(
      `mutation ($input: MeetCreateInput!) { meetCreate(input: $input) { meet { id } } }`,
      { input: { name: 'Evening of throws', startsOn: '2026-06-13', timeZone: 'UTC', rules: 'WA' } },
      api.adminToken,
    );
    const { id } = meetCreate.meetCreate.meet;
    const director = await api.token('director', id);
    const circle = await Circle.open(api, discusSheet(1), { id, director, referee: director });
    expect([await tableFor(circle), await tableFor(circle)]).toEqual([null, null]);
    const publish = `mutation ($input: MeetPublishInput!) { meetPublish(input: $input) { userErrors { code } } }`;
    await api.data(publish, { input: { meetId: id } }, director);
    expect((await tableFor(circle)).table.rows).toHaveLength(1);
  });
});

/**
 * Answers made of these fields alone are kept and sent to everybody. A field that is new here has to be looked at:
 * does it depend on anything but the competition's version, such as who asks, the time, or another table?
 */
it('every field of a competition is known to be kept, or known not to be', async () => {
  const type = buildClientSchema(await api.data(getIntrospectionQuery())).getType('Competition');
  const fields = isObjectType(type) ? Object.keys(type.getFields()) : [];
  const notKept = fields.filter((field) => !KEPT_FIELDS.has(field));
  expect(notKept.sort()).toEqual([
    'ageGraded',
    'auditTrail',
    'callList',
    'callingGroup',
    'checkIn',
    'claims',
    'crew',
    'decisionRequests',
    'draws',
    'entryChanges',
    'isWithheld',
    'journal',
    'meet',
    'protests',
    'qualification',
    'questions',
    'recordDecisions',
    'sheet',
    'startList',
    'withheldUntil',
  ]);
  expect([...KEPT_FIELDS].filter((field) => field !== '__typename' && !fields.includes(field))).toEqual([]);
});

it('what lies below a kept field and is not kept is there', async () => {
  const row = buildClientSchema(await api.data(getIntrospectionQuery())).getType('TableRow');
  const fields = isObjectType(row) ? Object.keys(row.getFields()) : [];
  expect([...NOT_KEPT_BELOW].filter((field) => !fields.includes(field))).toEqual([]);
});
