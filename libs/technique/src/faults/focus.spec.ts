import { wilson } from '../marks/proportion.js';
import type { AssessedSeries } from './assessed.js';
import { differenceInterval, focusFollowUp, type FocusPeriod, type FocusWindow } from './focus.js';

describe('the interval of a difference', () => {
  it('is that of the published example', () => {
    // Newcombe 1998, example (a), method 10: 56/70 less 48/80. Value from memory.
    const found = differenceInterval(56 / 70, wilson(56, 70, 0.95), 48 / 80, wilson(48, 80, 0.95));
    expect(found.low).toBeCloseTo(0.0524, 4);
    expect(found.high).toBeCloseTo(0.3339, 4);
  });
});

/** One series a day; `1` a throw with the fault, `0` without. */
function session(day: number, card: string): AssessedSeries {
  const trials = [...card].map((cell, at) => ({
    round: at + 1,
    markCm: 3000,
    severity: cell === '1' ? (2 as const) : (0 as const),
  }));
  return { id: `d${day}`, day, implement: 'discus-1000', trials };
}

const PERIOD: FocusPeriod = { code: 'DT-04', how: 'drill', fromDay: 100, toDay: 120 };
const COMPETITIONS = new Set([110, 160]);
const SESSIONS = [
  session(60, '111111'),
  session(80, '110110'),
  session(90, '111010'),
  session(101, '100000'),
  session(108, '000100'),
  session(110, '110100'),
  session(122, '010000'),
  session(125, '000000'),
  session(150, '001100'),
  session(160, '111000'),
];

describe('whether a change held', () => {
  const found = focusFollowUp(PERIOD, SESSIONS, ({ day }) => COMPETITIONS.has(day));
  const seenIn = (window: FocusWindow) => found.windows.find((one) => one.window === window);

  it('is seen in windows of their own', () => {
    expect(found.before).toMatchObject({ k: 8, n: 12 });
    expect(seenIn('during')?.seen).toMatchObject({ k: 2, n: 12 });
    expect(seenIn('week-after')?.seen).toMatchObject({ k: 1, n: 12 });
    // From day 125 to 150 nothing was thrown.
    expect(seenIn('after-break')?.seen).toMatchObject({ k: 5, n: 12 });
    expect(seenIn('in-competition')?.seen).toMatchObject({ k: 6, n: 12 });
  });

  it('is a difference with an interval', () => {
    const change = seenIn('during')?.change;
    expect(change).toMatchObject({ kind: 'answer', difference: expect.closeTo(-0.5, 12) });
    expect(change?.kind === 'answer' && change.interval.high).toBeLessThan(0);
    const inCompetition = seenIn('in-competition')?.change;
    expect(inCompetition?.kind === 'answer' && inCompetition.interval.high).toBeGreaterThan(0);
  });

  it('is not known before anybody looked, or from one session', () => {
    const early = focusFollowUp({ ...PERIOD, fromDay: 10, toDay: null }, SESSIONS.slice(0, 1), () => false);
    expect(early.before).toMatchObject({ code: 'NOT_ASSESSED' });
    expect(early.windows[0]?.change).toMatchObject({ code: 'NOT_ASSESSED' });
    const one = focusFollowUp(PERIOD, SESSIONS.slice(1, 4), () => false);
    expect(one.windows[0]?.change).toMatchObject({ code: 'LT_SERIES', have: 1, need: 2 });
  });
});
