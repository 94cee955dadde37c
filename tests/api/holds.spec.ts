import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

interface Situation {
  readonly hold: string;
  readonly rule: string | null;
  readonly sheet?: object;
  /** Brings the situation about. */
  readonly before: (circle: Circle) => Promise<unknown>;
  /** The entry that happened and does not fit. */
  readonly entry: (circle: Circle) => Promise<any>;
}

const CUT_AFTER_ONE = { plan: { rounds: 2, cuts: [{ after: 1, through: 2 }], reorderAfter: [] } };

/** Rule numbers as the rule set cites them (World Athletics Technical Rules). */
const SITUATIONS: readonly Situation[] = [
  {
    hold: 'ROUND_TAKEN',
    rule: 'WA TR25.6',
    before: (circle) => circle.record(1, 1, '58.10'),
    entry: (circle) => circle.record(1, 1, '59.00'),
  },
  {
    hold: 'EARLIER_ROUND_OPEN',
    rule: 'WA TR25.6',
    before: () => Promise.resolve(),
    entry: (circle) => circle.record(1, 2, '59.00'),
  },
  {
    hold: 'AFTER_RETIRING',
    rule: null,
    before: (circle) => circle.record(1, 1, 'r'),
    entry: (circle) => circle.record(1, 2, '59.00'),
  },
  {
    hold: 'NOT_STARTED',
    rule: null,
    before: (circle) =>
      circle.enter('competitorStartSet', { competitorId: circle.competitorOf(1), status: 'DNS' }),
    entry: (circle) => circle.record(1, 1, '59.00'),
  },
  {
    hold: 'DISQUALIFIED',
    rule: null,
    before: (circle) => disqualify(circle, 1),
    entry: (circle) => circle.record(1, 1, '59.00'),
  },
  {
    hold: 'WRONG_IMPLEMENT',
    rule: 'WA TR32.2',
    sheet: { implementGrams: 1000 },
    before: () => Promise.resolve(),
    entry: (circle) => circle.record(1, 1, '59.00', { implementGrams: 1500 }),
  },
  {
    hold: 'NOT_THROUGH',
    rule: 'WA TR25.6',
    sheet: CUT_AFTER_ONE,
    before: (circle) => circle.recordCard(['50.00'], ['51.00'], ['52.00']),
    entry: (circle) => circle.record(1, 2, '59.00'),
  },
  {
    hold: 'AFTER_STANDARD',
    rule: 'WA TR25.9-25.16',
    sheet: { stage: 'qualification', qualifying: { standard: '55.00', fill: 2 } },
    before: (circle) => circle.record(1, 1, '55.00'),
    entry: (circle) => circle.record(1, 2, '59.00'),
  },
];

function disqualify(circle: Circle, bib: number): Promise<any> {
  return circle.enter(
    'competitorDisqualify',
    { competitorId: circle.competitorOf(bib), rule: 'TR7.1', reason: 'conduct' },
    circle.referee,
  );
}

describe('what happened and does not fit is held', () => {
  it.each(SITUATIONS)('$hold', async ({ hold, rule, sheet, before, entry }) => {
    const circle = await Circle.open(api, discusSheet(3, sheet));
    await before(circle);
    const { table, progress } = await circle.read();
    const payload = await entry(circle);
    expect(payload).toMatchObject({ entry: { standing: 'HELD', hold: { code: hold } }, userErrors: [] });
    const { message, remedy, rule: cited } = payload.entry.hold;
    expect(message).toMatch(/^bib 1, round \d, 59\.00: /);
    expect(remedy).not.toBe('');
    expect(cited).toEqual(rule);

    const after = await circle.read();
    expect(after.questions).toMatchObject([
      { entry: payload.entry.id, about: 'held', holdCode: hold, body: { kind: 'attempt', mark: 5900 } },
    ]);
    // Outside the places and the call, but known to everybody who reads that a question is open.
    expect(after.table.rows).toEqual(table.rows);
    expect(after.progress).toEqual(progress);
    expect(after.table.isDisputed).toBe(true);
    const last = (await circle.journal()).at(-1);
    expect(last).toMatchObject({ id: payload.entry.id, standing: 'held', holdCode: hold });
  });

  it.each(SITUATIONS)('$hold: the referee dismisses it', async ({ sheet, before, entry }) => {
    const circle = await Circle.open(api, discusSheet(3, sheet));
    await before(circle);
    const { table } = await circle.read();
    const { entry: held } = await entry(circle);
    const ruling = { targetEntryId: held.id, decision: 'DISMISS', reason: 'not in the competition' };
    expect((await circle.enter('entryRule', ruling, circle.referee)).entry.standing).toBe('ACCEPTED');
    const after = await circle.read();
    expect([after.questions, after.table.isDisputed]).toEqual([[], false]);
    expect(after.table.rows).toEqual(table.rows);
  });
});

describe('what is held counts', () => {
  it('when the referee rules so, in the place of what stood there', async () => {
    const circle = await Circle.open(api);
    await circle.record(1, 1, '58.10');
    const { entry } = await circle.record(1, 1, '59.00');
    const ruling = {
      targetEntryId: entry.id,
      decision: 'COUNT',
      reason: 'the first belonged to the warm-up',
    };
    await circle.enter('entryRule', ruling, circle.referee);
    expect(await circle.seriesOf(1)).toEqual(['59.00']);
    expect((await circle.read()).questions).toEqual([]);
  });

  it('by itself when the earlier round comes in', async () => {
    const circle = await Circle.open(api);
    await circle.record(1, 2, '59.00');
    await circle.record(1, 1, 'X');
    expect(await circle.seriesOf(1)).toEqual(['X', '59.00']);
    expect((await circle.read()).questions).toEqual([]);
  });

  it('by itself when the retirement is taken back', async () => {
    const circle = await Circle.open(api);
    await circle.record(1, 1, '50.00');
    const { entry } = await circle.record(1, 2, 'r');
    await circle.record(1, 3, '59.00');
    await circle.enter(
      'entryReverse',
      { targetEntryId: entry.id, reason: 'another competitor retired' },
      circle.referee,
    );
    // Round 2 is open again, and round 3 waits for it.
    expect((await circle.read()).questions).toMatchObject([{ holdCode: 'EARLIER_ROUND_OPEN' }]);
    await circle.record(1, 2, '-');
    expect(await circle.seriesOf(1)).toEqual(['50.00', '-', '59.00']);
  });

  it('by itself when the competitor is reinstated, or is there after all', async () => {
    const circle = await Circle.open(api);
    await disqualify(circle, 1);
    await circle.record(1, 1, '59.00');
    await circle.enter(
      'competitorReinstate',
      { competitorId: circle.competitorOf(1), reason: 'jury of appeal' },
      circle.referee,
    );
    expect(await circle.places()).toContain('1 1. 59.00');
    await circle.enter('competitorStartSet', { competitorId: circle.competitorOf(2), status: 'DNS' });
    await circle.record(2, 1, '60.00');
    await circle.enter('competitorStartSet', { competitorId: circle.competitorOf(2), status: 'STARTED' });
    expect((await circle.places()).slice(0, 2)).toEqual(['2 1. 60.00', '1 2. 59.00']);
  });

  it('by itself when the competitor is admitted through the cut', async () => {
    const circle = await Circle.open(api, discusSheet(3, CUT_AFTER_ONE));
    await circle.recordCard(['50.00'], ['51.00'], ['52.00']);
    await circle.record(1, 2, '59.00');
    const admission = {
      competitorId: circle.competitorOf(1),
      afterRound: 1,
      by: 'REFEREE',
      reason: 'hindered',
    };
    await circle.enter('competitorAdmit', admission, circle.referee);
    expect((await circle.places())[0]).toBe('1 1. 59.00');
  });

  it('but a ruling cannot supply what is missing', async () => {
    const circle = await Circle.open(api);
    const { entry } = await circle.record(1, 2, '59.00');
    const ruling = { targetEntryId: entry.id, decision: 'COUNT', reason: 'it was seen' };
    const { userErrors } = await circle.enter('entryRule', ruling, circle.referee);
    expect(userErrors).toMatchObject([{ code: 'NOT_BY_RULING', path: ['input', 'decision'] }]);
  });
});

describe('a late entry that would change a cut already made', () => {
  it('is held with the names of those who would be in and out', async () => {
    const circle = await Circle.open(api, discusSheet(3, CUT_AFTER_ONE));
    const [, second] = await circle.recordCard(['50.00'], ['51.00'], ['52.00']);
    await circle.record(2, 2, '53.00');
    const correction = { attemptId: second![0], outcome: 'FOUL', reason: 'the sector judge had raised red' };
    const { version } = await circle.read();
    const { entry } = await circle.enter(
      'attemptCorrect',
      { ...correction, expectedVersion: version },
      circle.referee,
    );
    expect(entry).toMatchObject({
      standing: 'HELD',
      hold: {
        code: 'CHANGES_A_CUT',
        cutChanges: [
          { afterRound: 1, wouldBeIn: [circle.competitorOf(1)], wouldBeOut: [circle.competitorOf(2)] },
        ],
      },
    });
    expect(await circle.seriesOf(2)).toEqual(['51.00', '53.00']);
  });
});
