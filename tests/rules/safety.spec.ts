import {
  callsOf,
  progressOf,
  restoreCompetition,
  safetyChecklist,
  verticalProgressOf,
  waitsUntil,
  type EntryBody,
  type InterruptionCause,
  type SharedBody,
} from '#rules';
import { Bar, highJumpOf } from './support/bar.js';
import { Circle, discus } from './support/competition.js';

const MINUTE = 60_000;
const TWO_PM = Date.UTC(2026, 5, 6, 14);

const stop = (cause: InterruptionCause, seenAt = TWO_PM): SharedBody => ({
  kind: 'interruption',
  cause,
  note: null,
  seenAt,
});

function allClear(
  clearedAt: number,
  changes: object = {},
  event: 'discus' | 'high-jump' = 'discus',
): SharedBody {
  const confirmed = safetyChecklist(event).map(({ code }) => code);
  return { kind: 'all-clear', confirmed, newWarmUp: false, clearedAt, despite: null, ...changes };
}

const outcomeOf = ({ verdict }: Pick<Circle, 'verdict'>): string =>
  verdict?.standing === 'refused'
    ? verdict.refusal.code
    : verdict?.standing === 'held'
      ? verdict.hold.code
      : 'accepted';

function interrupted(cause: InterruptionCause = 'person-in-sector'): Circle {
  const circle = new Circle(discus(3));
  circle.trial('a', 1, '50.00');
  circle.enter(stop(cause));
  return circle;
}

describe('an interruption', () => {
  it('stops the calling, and forgets nothing of what is still to be taken', () => {
    const circle = interrupted();
    expect(progressOf(circle.state)).toMatchObject({ phase: 'running', up: null, next: null, then: null });
    expect(progressOf(circle.state).remaining).toBe(17);
    expect([...callsOf(circle.state)][0]).toMatchObject({ competitor: 'b', round: 1 });
  });

  it.each([['48.00'], ['X'], ['O']])('holds a trial that took place all the same: %s', (cell) => {
    const circle = interrupted();
    const id = circle.trial('b', 1, cell);
    expect(outcomeOf(circle)).toBe('DURING_INTERRUPTION');
    expect(circle.state.competitors[1]!.series[0]).toBeNull();
    expect(circle.state.questions).toEqual([{ entry: id, about: 'held', hold: 'DURING_INTERRUPTION' }]);
    circle.referee({ kind: 'ruling', entry: id, decision: 'count', reason: 'released before the call' });
    expect(circle.state.competitors[1]!.series[0]).toBe(id);
  });

  it.each([['-'], ['r']])('lets %s be told, which endangers nobody', (cell) => {
    const circle = interrupted();
    circle.trial('b', 1, cell);
    expect(outcomeOf(circle)).toBe('accepted');
  });

  it('ends with the all-clear, and the order goes on where it was', () => {
    const circle = interrupted();
    circle.enter(allClear(TWO_PM + MINUTE));
    expect(outcomeOf(circle)).toBe('accepted');
    expect(progressOf(circle.state).up).toMatchObject({ competitor: 'b', round: 1 });
    expect(circle.state.safety).toEqual({ stops: [], isConfirmed: true, hasNewWarmUp: false });
  });

  it('comes back when the all-clear was entered in error and is taken back', () => {
    const circle = interrupted();
    const id = circle.enter(allClear(TWO_PM + MINUTE));
    circle.enter({ kind: 'reversal', entry: id, reason: 'wrong tablet' });
    expect(circle.state.safety.stops).toHaveLength(1);
    expect(progressOf(circle.state).up).toBeNull();
  });

  it('is the same when the journal is read again', () => {
    const circle = interrupted('lightning');
    circle.trial('b', 1, '48.00');
    circle.enter(allClear(TWO_PM + 40 * MINUTE));
    const again = restoreCompetition(circle.state.setup, circle.state.journal);
    expect(again).toEqual(circle.state);
  });
});

describe('an all-clear', () => {
  it('confirms every point of the checklist of the event', () => {
    const circle = interrupted();
    circle.enter(allClear(TWO_PM, { confirmed: ['WEATHER', 'WARM_UP'] }));
    expect(outcomeOf(circle)).toBe('CHECKS_MISSING');
    expect(circle.state.safety.stops).toHaveLength(1);
  });

  it('can stand before the first warm-up trial, with nothing interrupted', () => {
    const circle = new Circle(discus(3));
    expect(circle.state.safety.isConfirmed).toBe(false);
    circle.enter(allClear(TWO_PM));
    expect(circle.state.safety.isConfirmed).toBe(true);
  });

  it('remembers that a new warm-up was given', () => {
    const circle = interrupted();
    circle.enter(allClear(TWO_PM + 30 * MINUTE, { newWarmUp: true }));
    expect(circle.state.safety.hasNewWarmUp).toBe(true);
  });
});

describe('lightning', () => {
  // NFHS guidelines (read in part): at least 30 minutes after the last thunder or flash, and each starts the wait anew.
  it('waits 30 minutes after the last flash or thunder, and each new one starts the wait anew', () => {
    const circle = interrupted('lightning');
    circle.enter(stop('lightning', TWO_PM + 20 * MINUTE));
    expect(waitsUntil(circle.state.safety.stops, 'NFHS')).toBe(TWO_PM + 50 * MINUTE);
    circle.enter(allClear(TWO_PM + 50 * MINUTE - 1));
    expect(outcomeOf(circle)).toBe('WAIT_NOT_OVER');
    circle.enter(allClear(TWO_PM + 50 * MINUTE));
    expect(outcomeOf(circle)).toBe('accepted');
  });

  it('counts from the latest flash, in whatever order the flashes come in', () => {
    const circle = interrupted();
    circle.enter(stop('lightning', TWO_PM + 9 * MINUTE));
    circle.enter(stop('lightning', TWO_PM + 3 * MINUTE));
    expect(waitsUntil(circle.state.safety.stops, 'WA')).toBe(TWO_PM + 39 * MINUTE);
  });

  it('has no wait where there was no lightning', () => {
    expect(waitsUntil(interrupted('wet-surface').state.safety.stops, 'WA')).toBeNull();
  });

  it('is waited for less only on the ground that a referee gives', () => {
    const circle = interrupted('lightning');
    const early = allClear(TWO_PM + MINUTE, { despite: 'a transformer, not a thunder' }) as EntryBody;
    circle.enter(early);
    expect(outcomeOf(circle)).toBe('NOT_ALLOWED');
    circle.referee({ ...early, despite: ' ' } as EntryBody);
    expect(outcomeOf(circle)).toBe('REASON_MISSING');
    circle.referee(early);
    expect(outcomeOf(circle)).toBe('accepted');
  });
});

describe('at a bar', () => {
  it('nobody is called until the all-clear, and a jump that took place is held', () => {
    const bar = new Bar(highJumpOf('1.70 1.75', 2));
    bar.enter(stop('wet-surface'));
    expect(verticalProgressOf(bar.state).up).toBeNull();
    bar.jump('a', '1.70', 1, 'O');
    expect(bar.verdict).toMatchObject({ standing: 'held', hold: { code: 'DURING_INTERRUPTION' } });
    bar.enter(allClear(TWO_PM, {}, 'high-jump'));
    expect(verticalProgressOf(bar.state).up).toMatchObject({ competitor: 'a', height: 170, trial: 1 });
  });
});
