import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Bar, highJumpSheet } from '../support/at-the-bar.js';
import { Circle } from '../support/at-the-circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const HEIGHTS = ['1.75', '1.80', '1.85'];

function open(count = 2, changes: object = {}): Promise<Bar> {
  return Bar.open(api, highJumpSheet(count, HEIGHTS, changes));
}

const heldFor = (code: string, rule: string | null = null): object => ({
  standing: 'HELD',
  hold: { code, rule, message: expect.any(String), remedy: expect.any(String), cutChanges: [] },
});

describe('what a volunteer may truly have seen is held, with rule and remedy', () => {
  // Rule numbers of World Athletics' Technical Rules as the rule set cites them.
  it.each<[string, string | null, (bar: Bar) => Promise<any>]>([
    ['ABOVE_THE_BAR', 'WA TR26.4', (bar) => bar.jump(1, '1.80', 1, 'O')],
    ['NOT_A_HEIGHT', 'WA TR26.4', (bar) => bar.jump(1, '1.77', 1, 'O')],
    ['EARLIER_TRIAL_OPEN', 'WA TR26.2', (bar) => bar.jump(1, '1.75', 2, 'O')],
    ['NOT_IN_JUMP_OFF', 'WA TR26.9', (bar) => bar.jumpOff(1, '1.75', 1, 'O')],
    [
      'TRIAL_TAKEN',
      'WA TR26.2',
      async (bar) => {
        await bar.jump(1, '1.75', 1, 'X');
        return bar.jump(1, '1.75', 1, 'O');
      },
    ],
    [
      'HEIGHT_CLEARED',
      'WA TR26.2',
      async (bar) => {
        await bar.jump(1, '1.75', 1, 'O');
        return bar.jump(1, '1.75', 2, 'O');
      },
    ],
    [
      'HEIGHT_PASSED',
      'WA TR26.2',
      async (bar) => {
        await bar.jump(1, '1.75', 1, '-');
        return bar.jump(1, '1.75', 2, 'O');
      },
    ],
    [
      'FOURTH_TRIAL',
      'WA TR26.2',
      async (bar) => {
        await bar.height('1.75', 'XXX');
        return bar.jump(1, '1.75', 4, 'O');
      },
    ],
    [
      'AFTER_THREE_FAILURES',
      'WA TR26.2',
      async (bar) => {
        await bar.height('1.75', 'XX-', 'O');
        await bar.height('1.80', 'X');
        return bar.jump(1, '1.80', 2, 'O');
      },
    ],
    [
      'AFTER_RETIRING',
      null,
      async (bar) => {
        await bar.jump(1, '1.75', 1, 'r');
        return bar.jump(1, '1.75', 2, 'O');
      },
    ],
    [
      'BAR_STEP_TOO_SMALL',
      'WA TR26.4',
      async (bar) => {
        await bar.height('1.75', 'O', 'O');
        return bar.enter('barSet', { height: '1.76' });
      },
    ],
    [
      'BAR_NOT_RISING',
      'WA TR26.4',
      async (bar) => {
        await bar.height('1.75', 'O', 'O');
        await bar.height('1.80', 'O', 'O');
        return bar.enter('barSet', { height: '1.77' });
      },
    ],
  ])('%s', async (code, rule, work) => {
    const bar = await open();
    const { entry } = await work(bar);
    expect(entry).toMatchObject(heldFor(code, rule));
    const { table, questions } = await bar.read();
    expect(table.isDisputed).toBe(true);
    expect(questions).toMatchObject([{ entry: entry.id, about: 'held', holdCode: code }]);
  });

  it('and counts by itself when what is missing comes in', async () => {
    const bar = await open();
    await bar.jump(1, '1.75', 1, 'O');
    expect((await bar.jump(1, '1.80', 1, 'O')).entry).toMatchObject(heldFor('ABOVE_THE_BAR', 'WA TR26.4'));
    await bar.jump(2, '1.75', 1, 'O');
    expect(await bar.rows()).toEqual(['1 1. 1.80 O O .', '2 2. 1.75 O . .']);
    expect((await bar.read()).questions).toEqual([]);
  });

  it('or when the referee rules, where only he can say', async () => {
    const bar = await open();
    await bar.height('1.75', 'O', 'O');
    await bar.height('1.80', 'O', 'O');
    const { entry } = await bar.enter('barSet', { height: '1.81' });
    expect(entry).toMatchObject(heldFor('BAR_STEP_TOO_SMALL', 'WA TR26.4'));
    const ruling = { targetEntryId: entry.id, decision: 'COUNT', reason: 'it did stand there' };
    await bar.enter('entryRule', ruling, bar.circle.referee);
    expect((await bar.read()).progress.vertical.bar).toBe('1.81');
  });
});

describe('what can never be right is refused by name, and leaves no trace', () => {
  it.each<[string, string | null, (bar: Bar) => Promise<any>]>([
    ['MARK_UNIT', 'height', (bar) => bar.jump(1, '5-09.00', 1, 'O')],
    ['FOUL_NOT_OF_EVENT', 'foul', (bar) => bar.jump(1, '1.75', 1, 'X', { foul: 'SECTOR' })],
    ['FOUL_NOT_OF_EVENT', 'foul', (bar) => bar.jump(1, '1.75', 1, 'O', { foul: 'BAR' })],
    [
      'INCIDENT_NOT_OF_OUTCOME',
      'incident',
      (bar) => bar.jump(1, '1.75', 1, 'X', { incident: 'POLE_BROKEN' }),
    ],
    ['PROTEST_NOT_EXPECTED', 'isProtested', (bar) => bar.jump(1, '1.75', 1, 'O', { isProtested: true })],
    ['PROTEST_NOT_EXPECTED', 'isProtested', (bar) => bar.jumpOff(1, '1.75', 1, 'O', { isProtested: true })],
    [
      'HEIGHT_NOT_LEFT_OUT',
      'leavesOut',
      (bar) => bar.enter('barSet', { height: '1.80', leavesOut: ['1.78'] }),
    ],
    ['NO_JUMP_OFF', null, (bar) => bar.enter('jumpOffDecline', { reason: 'tired' })],
    [
      'UPRIGHTS_NOT_OF_EVENT',
      null,
      (bar) => bar.enter('uprightsSet', { competitorId: bar.idOf(1), behindZeroCm: 40 }),
    ],
    [
      'NAMED_TWICE',
      'competitorIds',
      (bar) =>
        bar.enter('jumpOrderSet', {
          height: '1.75',
          trial: 1,
          competitorIds: [bar.idOf(1), bar.idOf(1)],
          reason: 'clash',
        }),
    ],
    ['WRONG_EVENT', 'competitionId', (bar) => bar.circle.record(1, 1, '58.10')],
    [
      'WRONG_EVENT',
      'competitionId',
      (bar) => bar.enter('roundOrderSet', { round: 1, competitorIds: [bar.idOf(1)], reason: 'clash' }),
    ],
  ])('%s of %s', async (code, field, work) => {
    const bar = await open();
    const before = await bar.read();
    const { entry, userErrors } = await work(bar);
    expect(entry).toBeNull();
    expect(userErrors).toMatchObject([{ code, path: field === null ? null : ['input', field] }]);
    expect([userErrors[0].message, userErrors[0].remedy]).toEqual([expect.any(String), expect.any(String)]);
    expect(await bar.read()).toEqual(before);
  });

  it('WRONG_EVENT: a jump over a bar in a throw', async () => {
    const circle = await Circle.open(api);
    const turn = { competitorId: circle.competitorOf(1), height: '1.75', trial: 1, outcome: 'CLEARED' };
    const { userErrors } = await circle.enter('jumpRecord', turn);
    expect(userErrors).toMatchObject([{ code: 'WRONG_EVENT', path: ['input', 'competitionId'] }]);
    expect(userErrors[0].remedy).toContain('attemptRecord');
    expect(await circle.journal()).toEqual([]);
  });

  it('MARK_UNIT names the height in a list', async () => {
    const bar = await open();
    const { entry } = await bar.jump(1, '1.75', 1, 'X');
    const { version: expectedVersion } = await bar.read();
    const move = { attemptId: entry.id, competitorId: bar.idOf(2), height: '5-09.00', trial: 1 };
    const moved = await bar.enter('jumpsMove', { moves: [move], reason: 'wrong line', expectedVersion });
    expect(moved.userErrors).toMatchObject([{ code: 'MARK_UNIT', path: ['input', 'moves', '0', 'height'] }]);
    const set = await bar.enter('barSet', { height: '1.80', leavesOut: ['5-09.00'] });
    expect(set.userErrors).toMatchObject([{ code: 'MARK_UNIT', path: ['input', 'leavesOut', '0'] }]);
  });
});

describe('what is done about entries at the bar', () => {
  it('corrects a trial: by the official until the next jumps, afterwards as a request', async () => {
    const bar = await open();
    const { entry } = await bar.jump(1, '1.75', 1, 'X', { foul: 'BAR' });
    const correct = async (outcome: string): Promise<any> => {
      const { version: expectedVersion } = await bar.read();
      const judgement = { attemptId: entry.id, outcome, reason: 'wrong flag' };
      return bar.enter('jumpCorrect', { ...judgement, expectedVersion });
    };
    expect((await correct('CLEARED')).entry.standing).toBe('ACCEPTED');
    await bar.jump(2, '1.75', 1, 'O');
    const request = (await correct('FAILED')).entry;
    expect(request).toMatchObject(heldFor('AWAITS_REFEREE'));
    expect(await bar.rows()).toEqual(['1 1. 1.75 O . .', '2 1. 1.75 O . .']);
    const ruling = { targetEntryId: request.id, decision: 'COUNT', reason: 'seen by both judges' };
    await bar.enter('entryRule', ruling, bar.circle.referee);
    expect(await bar.rows()).toEqual(['2 1. 1.75 O . .', '1 - none X . .']);
  });

  it('refuses a correction that was decided on an older version', async () => {
    const bar = await open();
    const { entry, competition } = await bar.jump(1, '1.75', 1, 'X');
    await bar.jump(2, '1.75', 1, 'O');
    const judgement = { attemptId: entry.id, outcome: 'CLEARED', reason: 'wrong flag' };
    const late = await bar.enter('jumpCorrect', { ...judgement, expectedVersion: competition.version });
    expect(late.userErrors).toMatchObject([{ code: 'VERSION_CONFLICT' }]);
  });

  it('moves trials that were entered on the wrong line', async () => {
    const bar = await open();
    const first = (await bar.jump(1, '1.75', 1, 'X')).entry;
    const second = (await bar.jump(2, '1.75', 1, 'O')).entry;
    const moves = [
      { attemptId: first.id, competitorId: bar.idOf(2), height: '1.75', trial: 1 },
      { attemptId: second.id, competitorId: bar.idOf(1), height: '1.75', trial: 1 },
    ];
    const { version: expectedVersion } = await bar.read();
    const input = { moves, reason: 'lines exchanged', expectedVersion };
    expect((await bar.enter('jumpsMove', input, bar.circle.referee)).entry.standing).toBe('ACCEPTED');
    expect(await bar.rows()).toEqual(['1 1. 1.75 O . .', '2 - none X . .']);
  });

  it('calls some first for one trial at one height', async () => {
    const bar = await open(3);
    const order = { height: '1.75', trial: 1, competitorIds: [bar.idOf(3)], reason: 'clash with the shot' };
    expect((await bar.enter('jumpOrderSet', order)).entry.standing).toBe('ACCEPTED');
    const { calls } = (await bar.read()).progress.vertical;
    expect(calls).toEqual([{ bib: '3' }, { bib: '1' }, { bib: '2' }]);
  });

  it('takes an entry back, disqualifies and reinstates, as in any event', async () => {
    const bar = await open();
    const { entry } = await bar.jump(1, '1.75', 1, 'O');
    await bar.enter('entryReverse', { targetEntryId: entry.id, reason: 'not he' });
    await bar.jump(2, '1.75', 1, 'O');
    const person = { competitorId: bar.idOf(2), reason: 'conduct' };
    await bar.enter('competitorDisqualify', { ...person, rule: 'TR7.1' }, bar.circle.referee);
    expect((await bar.rows())[1]).toBe('2 - DQ O . .');
    await bar.enter('competitorReinstate', person, bar.circle.referee);
    await bar.enter('competitorStartSet', { competitorId: bar.idOf(1), status: 'DNS' });
    expect(await bar.rows()).toEqual(['2 1. 1.75 O . .', '1 - DNS . . .']);
  });

  it('keeps a failure under protest open, with the table as it would be', async () => {
    const bar = await open();
    await bar.jump(1, '1.75', 1, 'O');
    const { entry } = await bar.jump(2, '1.75', 1, 'X', { isProtested: true });
    await bar.jump(2, '1.75', 2, 'X');
    await bar.jump(2, '1.75', 3, 'X');
    const disputed = await bar.read();
    expect(disputed.table.rowsIfProtestsSucceed).toMatchObject([
      { bib: '1', place: 1 },
      { bib: '2', place: 1 },
    ]);
    expect(disputed.questions).toMatchObject([{ entry: entry.id, about: 'protest' }]);
  });

  it('lets through to the final who was hindered in a qualification', async () => {
    const bar = await open(2, { stage: 'qualification', qualifying: { standard: '1.80' } });
    await bar.height('1.75', 'O', 'XXX');
    await bar.height('1.80', 'O');
    const admission = { competitorId: bar.idOf(2), by: 'REFEREE', reason: 'hindered' };
    await bar.enter('competitorAdmit', admission, bar.circle.referee);
    const { table } = await bar.read();
    expect(table.rows.map(({ bib, qualified }: any) => [bib, qualified])).toEqual([
      ['1', 'Q'],
      ['2', 'qR'],
    ]);
    expect(table.rows[0].vertical.condition).toBe('standard reached');
  });
});

describe('an entry at the bar that is sent again', () => {
  it('gets the same answer and changes nothing; with other content it is refused', async () => {
    const bar = await open();
    const entryId = randomUUID();
    const first = await bar.jump(1, '1.75', 1, 'X', { entryId, foul: 'BAR' });
    const before = await bar.read();
    expect(await bar.jump(1, '1.75', 1, 'X', { entryId, foul: 'BAR' })).toEqual({ ...first, isReplay: true });
    expect((await bar.jump(1, '1.75', 1, 'X', { entryId })).userErrors).toMatchObject([
      { code: 'ID_REUSED' },
    ]);
    expect(await bar.read()).toEqual(before);
  });
});
