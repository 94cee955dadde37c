import { officialResults } from '#persistence';
import { recount } from '#rules';
import { randomUUID } from 'node:crypto';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const NAMES = ['Ferrin Ashgrove', 'Odalys Thornwick', 'Maelis Quillane'];

/** Three throwers with names, two rounds, everything thrown. */
async function finished(): Promise<Circle> {
  const competitors = NAMES.map((name, at) => ({ bib: String(at + 1), name, club: 'Quarry Lane AC' }));
  const sheet = discusSheet(3, { competitors, plan: { rounds: 2, cuts: [], reorderAfter: [] } });
  const circle = await Circle.open(api, sheet);
  await circle.recordCard(['58.10', '57.02'], ['57.44', '58.10'], ['X', 'X']);
  return circle;
}

async function signOff(circle: Circle, input: object = {}, token = circle.referee): Promise<any> {
  const { version } = await circle.read();
  return circle.enter('competitionSignOff', { expectedVersion: version, ...input }, token);
}

function archived(circle: Circle) {
  const { uuid } = readGlobalId(circle.competition.id)!;
  return api.database.read((at) => officialResults.ofCompetition(at, api.organisationId, uuid));
}

describe('signing off', () => {
  it('makes the result official and archives it as a sheet that counts to it, without a name', async () => {
    const circle = await finished();
    const before = await circle.read();
    const payload = await signOff(circle);
    expect(payload).toMatchObject({
      entry: { standing: 'ACCEPTED', sequence: 7 },
      competition: { status: 'OFFICIAL' },
    });
    const after = await circle.read();
    expect(after).toMatchObject({
      status: 'OFFICIAL',
      progress: { phase: 'official', up: null },
      table: { isOfficial: true },
    });
    expect(after.table.rows).toEqual(before.table.rows);
    expect(after.version).toBe(payload.competition.version);

    const [result, ...more] = await archived(circle);
    expect(more).toEqual([]);
    expect(result).toMatchObject({ revision: 1, sequence: 7 });
    expect(result!.sheet).toMatchObject({
      format: 'sectorline-sheet/1',
      competitors: [
        { bib: '1', series: ['58.10', '57.02'] },
        { bib: '2', series: ['57.44', '58.10'] },
        { bib: '3', series: ['X', 'X'] },
      ],
    });
    for (const name of NAMES) expect(JSON.stringify(result)).not.toContain(name);
    const counted: unknown = JSON.parse(JSON.stringify(recount(JSON.stringify(result!.sheet))));
    expect(counted).toEqual(result!.result);
  });

  it('is refused while a question is open', async () => {
    const circle = await finished();
    await circle.record(1, 2, '60.00');
    const { userErrors } = await signOff(circle);
    expect(userErrors).toMatchObject([{ code: 'OPEN_QUESTIONS' }]);
    expect(userErrors[0].remedy).not.toBe('');
    expect([(await circle.read()).status, await archived(circle)]).toEqual(['OPEN', []]);
  });

  it('is refused while trials are outstanding, unless it says why the competition ended', async () => {
    const circle = await Circle.open(api);
    await circle.recordCard(['58.10'], ['57.00'], ['56.00']);
    expect((await signOff(circle)).userErrors).toMatchObject([
      { code: 'NOT_COMPLETE', path: ['input', 'incomplete'] },
    ]);
    expect((await signOff(circle, { incomplete: 'darkness' })).competition.status).toBe('OFFICIAL');
  });

  it('is for the version whose table was signed', async () => {
    const circle = await finished();
    const { version } = await circle.read();
    const { userErrors } = await signOff(circle, { expectedVersion: version - 1 });
    expect(userErrors).toMatchObject([{ code: 'VERSION_CONFLICT', currentVersion: version }]);
  });

  it('is answered as before when it is sent again', async () => {
    const circle = await finished();
    const { version } = await circle.read();
    const input = { entryId: randomUUID(), expectedVersion: version };
    const first = await circle.enter('competitionSignOff', input, circle.referee);
    const again = await circle.enter('competitionSignOff', input, circle.referee);
    expect([again.entry, again.isReplay]).toEqual([first.entry, true]);
    expect(await archived(circle)).toHaveLength(1);
  });
});

describe('a result that is official', () => {
  it('does not change by a trial that comes late: it is held', async () => {
    const circle = await finished();
    await signOff(circle);
    const { table } = await circle.read();
    const { entry } = await circle.record(3, 2, '60.00');
    expect(entry).toMatchObject({ standing: 'HELD', hold: { code: 'SIGNED_OFF' } });
    const after = await circle.read();
    expect([after.status, after.table.rows]).toEqual(['OFFICIAL', table.rows]);
    expect(after.questions).toMatchObject([{ holdCode: 'SIGNED_OFF' }]);
  });

  it('does not change by a decision: that needs a reopening first', async () => {
    const circle = await finished();
    await signOff(circle);
    const input = { competitorId: circle.competitorOf(1), rule: 'TR7.1', reason: 'conduct' };
    const { userErrors } = await circle.enter('competitorDisqualify', input, circle.referee);
    expect(userErrors).toMatchObject([{ code: 'RESULT_OFFICIAL' }]);
  });

  it('is reopened by the director alone, with a reason, and signed again; both archives stay', async () => {
    const circle = await finished();
    await signOff(circle);
    const [first] = await archived(circle);
    const { errors } = await api.send(
      `mutation ($input: CompetitionReopenInput!) { competitionReopen(input: $input) { isReplay } }`,
      { input: { competitionId: circle.competition.id, entryId: randomUUID(), reason: 'appeal' } },
      circle.referee,
    );
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    const reopened = await circle.enter('competitionReopen', { reason: 'appeal upheld' }, circle.director);
    expect(reopened).toMatchObject({ entry: { standing: 'ACCEPTED' }, competition: { status: 'OPEN' } });
    expect((await circle.read()).table.isOfficial).toBe(false);

    const input = { competitorId: circle.competitorOf(2), rule: 'TR7.1', reason: 'conduct' };
    await circle.enter('competitorDisqualify', input, circle.referee);
    await signOff(circle);
    expect(await circle.places()).toEqual(['1 1. 58.10', '3 - NM', '2 - DQ']);
    const [second, kept] = await archived(circle);
    expect(second).toMatchObject({ revision: 2, sequence: 10 });
    expect(kept).toEqual(first);
  });

  it('keeps the version rising through it all', async () => {
    const circle = await finished();
    const versions = [(await circle.read()).version];
    await signOff(circle);
    versions.push((await circle.read()).version);
    await circle.enter('competitionReopen', { reason: 'appeal' }, circle.director);
    versions.push((await circle.read()).version);
    expect(versions).toEqual([...new Set(versions)].sort((a, b) => a - b));
  });
});

describe('the journal', () => {
  it('is read page by page without a gap, with who, on which device and when', async () => {
    const circle = await Circle.open(api);
    const from = Date.now();
    const device = { device: 'Circle 2 tablet', deviceAt: '2026-06-13T10:00:00.250Z' };
    await circle.record(1, 1, '58.10', device);
    await circle.record(2, 1, 'X', device);
    await circle.record(3, 1, '-', device, circle.referee);
    await circle.record(1, 2, '59.00');
    await circle.record(1, 3, '59.50', {}, circle.director);
    for (const pageSize of [1, 2, 5, 100]) {
      const journal = await circle.journal(pageSize);
      expect(journal.map(({ sequence }) => sequence)).toEqual([1, 2, 3, 4, 5]);
    }
    const journal = await circle.journal();
    expect(journal[0]).toMatchObject({ authority: 'official', ...device });
    expect(journal[2]).toMatchObject({ authority: 'referee', ...device });
    // Without a name of its own a device is called as its token.
    expect(journal[3]).toMatchObject({ device: 'test official', deviceAt: null });
    const [first, , second] = journal.map(({ actor }) => actor);
    expect(first).toMatch(/^[0-9a-f-]{36}$/);
    expect(second).not.toBe(first);
    for (const { recordedAt } of journal) {
      expect(new Date(recordedAt).getTime()).toBeGreaterThanOrEqual(from - 1000);
      expect(new Date(recordedAt).getTime()).toBeLessThanOrEqual(Date.now() + 1000);
    }
  });

  it('has a page at most, and no cursor of another list', async () => {
    const circle = await Circle.open(api);
    const read = (first: number, after: string | null) =>
      api.send(
        `query ($id: ID!, $first: Int!, $after: String) {
           competition(id: $id) { journal(first: $first, after: $after) { edges { cursor } } } }`,
        { id: circle.competition.id, first, after },
        circle.official,
      );
    for (const [first, after] of [
      [0, null],
      [101, null],
      [5, 'bm90IGEgY3Vyc29y'],
    ] as const) {
      expect((await read(first, after)).errors?.[0]?.extensions.code).toBe('BAD_USER_INPUT');
    }
  });
});
