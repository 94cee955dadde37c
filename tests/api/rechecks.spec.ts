import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { Tent } from '../support/inspection.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const SHEET = discusSheet(3, { category: { sex: 'W' }, implementGrams: 1000 });

async function open(sheet: object = SHEET): Promise<{ circle: Circle; tent: Tent }> {
  const circle = await Circle.open(api, sheet);
  return { circle, tent: new Tent(api, circle) };
}

const TRIALS = `query ($id: ID!) { competition(id: $id) { table { rows { bib series { cell implementGrams implementId } } } } }`;

async function trialsOf({ competition }: Circle, bib: number): Promise<any[]> {
  const { table } = (await api.data(TRIALS, { id: competition.id })).competition;
  return table.rows.find((row: any) => row.bib === String(bib)).series;
}

// That an implement which was not checked makes a trial a failure: WA TR32.2, number from memory.
describe('a trial that names its implement', () => {
  it('shows it with its registered mass, in the table and in the journal', async () => {
    const { circle, tent } = await open();
    const implementId = await tent.passed();
    const { entry } = await circle.record(1, 1, '50.00', { implementId });
    expect(entry).toMatchObject({ standing: 'ACCEPTED', notices: [] });
    await circle.record(2, 1, '48.00');
    await circle.record(3, 1, '-');
    expect(await trialsOf(circle, 1)).toEqual([{ cell: '50.00', implementGrams: 1000, implementId }]);
    expect(await trialsOf(circle, 2)).toEqual([{ cell: '48.00', implementGrams: 1000, implementId: null }]);
    expect(await trialsOf(circle, 3)).toEqual([{ cell: '-', implementGrams: null, implementId: null }]);
    const [first] = await circle.journal();
    expect(first.body).toMatchObject({ implementId, implementStanding: 'passed', implementGrams: 1000 });
  });

  it.each<[string, string, (tent: Tent) => Promise<string>, object?]>([
    ['has not been inspected', 'IMPLEMENT_NOT_PASSED', (tent) => tent.register()],
    [
      'has failed',
      'IMPLEMENT_NOT_PASSED',
      async (tent) => {
        const id = await tent.register();
        await tent.inspect(id, 990);
        return id;
      },
    ],
    [
      'is kept back',
      'IMPLEMENT_NOT_PASSED',
      async (tent) => {
        const id = await tent.passed();
        await tent.recheck(id, null, { isKeptBack: true });
        return id;
      },
    ],
    ['no register knows', 'IMPLEMENT_NOT_PASSED', () => Promise.resolve(randomUUID())],
    ['is of another mass', 'WRONG_IMPLEMENT', (tent) => tent.passed({ grams: 750 })],
    ['is of another event', 'WRONG_IMPLEMENT', (tent) => tent.passed({ event: 'SHOT', grams: 1000 })],
    ['is said to have another mass', 'WRONG_IMPLEMENT', (tent) => tent.passed(), { implementGrams: 1500 }],
  ])('is held when it %s', async (_what, code, prepare, more = {}) => {
    const { circle, tent } = await open();
    const implementId = await prepare(tent);
    const { entry, userErrors } = await circle.record(1, 1, '50.00', { implementId, ...more });
    expect(userErrors).toEqual([]);
    expect(entry).toMatchObject({ standing: 'HELD', hold: { code, rule: 'WA TR32.2' } });
    expect(entry.hold.remedy).not.toBe('');
    const ruling = {
      targetEntryId: entry.id,
      decision: 'COUNT',
      reason: 'weighed at the circle: it is right',
    };
    await circle.enter('entryRule', ruling, circle.referee);
    expect(await circle.seriesOf(1)).toEqual(['50.00']);
  });

  it('gets the same answer when it is sent again after the implement was inspected', async () => {
    const { circle, tent } = await open();
    const implementId = await tent.register();
    const trial = { implementId, entryId: randomUUID() };
    expect(await circle.record(1, 1, '50.00', trial)).toMatchObject({ entry: { standing: 'HELD' } });
    await tent.inspect(implementId, 1002);
    expect(await circle.record(1, 1, '50.00', trial)).toMatchObject({
      isReplay: true,
      entry: { standing: 'HELD', hold: { code: 'IMPLEMENT_NOT_PASSED' } },
    });
    expect(await circle.record(2, 1, '49.00', { implementId })).toMatchObject({
      entry: { standing: 'ACCEPTED' },
    });
  });
});

describe('a re-check', () => {
  it('after a record is kept with its attempt, and lets the implement be used again', async () => {
    const { circle, tent } = await open();
    const implementId = await tent.passed();
    const { entry } = await circle.record(1, 1, '50.00', { implementId });
    const { inspection, implement, questioned } = await tent.recheck(implementId, 1001, {
      ...{ cause: 'RECORD', attemptId: entry.id },
    });
    expect(inspection).toMatchObject({
      kind: 'RECHECK',
      cause: 'RECORD',
      attemptId: entry.id,
      outcome: 'PASSED',
    });
    expect([implement.status, questioned]).toEqual(['RECHECKED', []]);
    expect((await circle.record(2, 1, '49.00', { implementId })).entry.standing).toBe('ACCEPTED');
  });

  it('for a record names its attempt, and says when that names another implement', async () => {
    const { circle, tent } = await open();
    const [mine, other] = [await tent.passed(), await tent.passed({ label: 'LT 2' })];
    const { entry } = await circle.record(1, 1, '50.00', { implementId: mine });
    const without = await tent.recheck(mine, 1001, { cause: 'RECORD' });
    expect(without.userErrors).toMatchObject([{ code: 'ATTEMPT_MISSING', path: ['input', 'attemptId'] }]);
    const nowhere = await tent.recheck(mine, 1001, { cause: 'RECORD', attemptId: randomUUID() });
    expect(nowhere.userErrors).toMatchObject([{ code: 'NOT_FOUND', path: ['input', 'attemptId'] }]);
    const wrong = await tent.recheck(other, 1001, { cause: 'RECORD', attemptId: entry.id });
    expect(wrong).toMatchObject({ notices: ['OTHER_IMPLEMENT'], userErrors: [] });
    const { version } = await circle.read();
    const correction = { attemptId: entry.id, outcome: 'VALID', mark: '50.00', implementId: other };
    const why = { reason: 'the other discus was on the rack', expectedVersion: version };
    await circle.enter('attemptCorrect', { ...correction, ...why }, circle.referee);
    const right = await tent.recheck(other, 1001, { cause: 'RECORD', attemptId: entry.id });
    expect(right).toMatchObject({ notices: [], userErrors: [] });
  });

  it('that fails puts the trials made with the implement to the referee, and changes nothing by itself', async () => {
    const { circle, tent } = await open();
    const [mine, other] = [await tent.passed(), await tent.passed({ label: 'LT 2' })];
    const [first, , third] = [
      await circle.record(1, 1, '50.00', { implementId: mine }),
      await circle.record(2, 1, '49.00', { implementId: other }),
      await circle.record(3, 1, '48.00', { implementId: mine }),
    ];
    await circle.record(1, 2, 'X', { implementId: mine });
    const [one, two] = [first.entry.id, third.entry.id];
    const look = { id: randomUUID(), cause: 'RECORD', attemptId: one };
    const failed = await tent.recheck(mine, 998, look);
    expect(failed).toMatchObject({
      questioned: [one, two],
      notices: ['FAILED'],
      implement: { status: 'FAILED' },
    });
    expect(await tent.recheck(mine, 998, look)).toMatchObject({ isReplay: true, questioned: [one, two] });

    const { table, questions } = await circle.read();
    expect(table.rows.map(({ mark }: any) => mark)).toEqual(['50.00', '49.00', '48.00']);
    expect(table.isDisputed).toBe(true);
    expect(questions.map(({ entry, about }: any) => [entry, about])).toEqual([
      [one, 'implement'],
      [two, 'implement'],
    ]);
    const asked = (await circle.journal()).at(-1);
    expect(asked).toMatchObject({
      kind: 'implement-query',
      authority: 'official',
      body: { attempts: [one, two] },
    });
    expect(asked.body.reason).toContain('mass 998 g, at least 1000 g');

    const rule = (targetEntryId: string, decision: string): Promise<any> =>
      circle.enter('entryRule', { targetEntryId, decision, reason: 'looked at' }, circle.referee);
    await rule(one, 'DISMISS');
    await rule(two, 'COUNT');
    expect(await circle.places()).toEqual(['2 1. 49.00', '3 2. 48.00', '1 -']);
    expect(await circle.seriesOf(1)).toEqual(['X', 'X']);
    expect((await circle.read()).questions).toEqual([]);
  });

  it('that fails reaches every competition of the meet, a signed one as a held entry', async () => {
    const { circle, tent } = await open();
    const second = await Circle.open(api, SHEET, circle.meet);
    const implementId = await tent.passed();
    const { entry } = await circle.record(1, 1, '50.00', { implementId });
    const other = await second.record(1, 1, '51.00', { implementId });
    const { version } = await second.read();
    const signature = { expectedVersion: version, incomplete: 'darkness' };
    await second.enter('competitionSignOff', signature, second.referee);
    const { questioned } = await tent.recheck(implementId, 998);
    expect([...questioned].sort()).toEqual([entry.id, other.entry.id].sort());
    expect((await second.read()).questions).toMatchObject([{ about: 'held', holdCode: 'SIGNED_OFF' }]);
    expect((await circle.read()).questions).toMatchObject([{ entry: entry.id, about: 'implement' }]);
  });

  it('that fails while others record leaves no trial of the implement unasked', async () => {
    const { circle, tent } = await open(discusSheet(12, { implementGrams: 1000 }));
    const implementId = await tent.passed();
    const trials = Array.from({ length: 12 }, (_, at) => circle.record(at + 1, 1, '50.00', { implementId }));
    const [recorded, failed] = await Promise.all([Promise.all(trials), tent.recheck(implementId, 998)]);
    const accepted = recorded
      .filter(({ entry }) => entry.standing === 'ACCEPTED')
      .map(({ entry }) => entry.id);
    expect([...failed.questioned].sort()).toEqual(accepted.sort());
    expect((await circle.read()).questions).toHaveLength(12);
  });
});
