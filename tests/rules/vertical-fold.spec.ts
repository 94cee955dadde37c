import { INCIDENTS, verticalProgressOf, type HoldCode, type Verdict, type VerticalSetup } from '#rules';
import { Bar, correction, highJumpOf } from './support/bar.js';

const held = (verdict: Verdict | undefined): HoldCode | undefined =>
  verdict?.standing === 'held' ? verdict.hold.code : undefined;

/** What a card shows of a competitor: cells by height. */
function cells(bar: Bar, index = 0): string[] {
  const letters = { cleared: 'O', failed: 'X', passed: '-', retired: 'r' } as const;
  const { series } = bar.state.card.competitors[index]!;
  return series.map((trials) => (trials ?? []).map((trial) => letters[trial]).join(''));
}

describe('three failures in a row', () => {
  // WA TR26.2, read in an older text: whatever the heights; a pass does not break the run and is no failure.
  it('put a competitor out, across heights', () => {
    const bar = new Bar(highJumpOf('1.80 1.83 1.86', 2));
    bar.height('1.80', 'X-', 'O');
    bar.height('1.83', 'X-', 'O');
    expect(bar.state.competitors[0]).toMatchObject({ condition: 'in', failuresInARow: 2 });
    bar.jump('a', '1.86', 1, 'X');
    expect(bar.state.competitors[0]).toMatchObject({ condition: 'three failures', failuresInARow: 3 });
    expect(cells(bar)).toEqual(['X-', 'X-', 'X']);
  });

  it('begin anew after a clearance', () => {
    const bar = new Bar(highJumpOf('1.80 1.83', 1));
    bar.height('1.80', 'XXO');
    bar.height('1.83', 'XX');
    expect(bar.state.competitors[0]).toMatchObject({ condition: 'in', failuresInARow: 2, best: 180 });
  });
});

describe('a pass', () => {
  // The commentary of World Athletics lets the regulations of children's and school meets take it so (read in part).
  it('gives up one trial only where the regulations say so', () => {
    const bar = new Bar(highJumpOf('1.20 1.25', 1, { passGivesUp: 'trial' }));
    bar.jump('a', '1.20', 1, 'X');
    bar.jump('a', '1.20', 2, '-');
    expect(cells(bar)).toEqual(['X-']);
    bar.jump('a', '1.20', 3, 'O');
    expect(bar.verdict?.standing).toBe('accepted');
    expect(cells(bar)).toEqual(['XO']);
  });

  it('between two failures leaves the height behind', () => {
    const bar = new Bar(highJumpOf('1.20 1.25', 1, { passGivesUp: 'trial' }));
    bar.jump('a', '1.20', 1, 'X');
    bar.jump('a', '1.20', 2, '-');
    bar.jump('a', '1.20', 3, 'X');
    expect(cells(bar)).toEqual(['XX-']);
    expect(bar.state.competitors[0]).toMatchObject({ condition: 'in', next: { height: 125, trial: 1 } });
    // The third failure in a row is the end, whatever was passed before it.
    bar.jump('a', '1.25', 1, '-');
    bar.jump('a', '1.25', 2, 'X');
    expect(cells(bar)).toEqual(['XX-', 'X']);
  });
});

describe('what is held because it may have happened', () => {
  const two = '1.80 1.83 1.86';
  it.each<[HoldCode, (bar: Bar) => void, Partial<VerticalSetup>?]>([
    [
      'SIGNED_OFF',
      (bar) => {
        bar.referee({ kind: 'sign-off', incomplete: 'lightning' });
        bar.jump('a', '1.80', 1, 'O');
      },
    ],
    [
      'NOT_STARTED',
      (bar) => {
        bar.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
        bar.jump('a', '1.80', 1, 'O');
      },
    ],
    [
      'DISQUALIFIED',
      (bar) => {
        bar.referee({ kind: 'disqualification', competitor: 'a', rule: 'TR7.1', reason: 'conduct' });
        bar.jump('a', '1.80', 1, 'O');
      },
    ],
    [
      'AFTER_RETIRING',
      (bar) => {
        bar.height('1.80', 'r', 'O');
        bar.jump('a', '1.83', 1, 'O');
      },
    ],
    [
      'AFTER_STANDARD',
      (bar) => {
        bar.height('1.80', 'O', '-');
        bar.height('1.83', '.', 'X');
        bar.jump('a', '1.83', 1, 'O');
      },
      { stage: 'qualification', qualifying: { standard: 180, fill: 0 } },
    ],
    [
      'AFTER_THREE_FAILURES',
      (bar) => {
        bar.height('1.80', 'XXX', 'O');
        bar.jump('a', '1.83', 1, 'O');
      },
    ],
    [
      'FOURTH_TRIAL',
      (bar) => {
        bar.height('1.80', 'XXX', 'O');
        bar.jump('a', '1.80', 4, 'O');
      },
    ],
    [
      'HEIGHT_CLEARED',
      (bar) => {
        bar.height('1.80', 'O', 'X');
        bar.jump('a', '1.80', 2, 'O');
      },
    ],
    [
      'HEIGHT_PASSED',
      (bar) => {
        bar.height('1.80', '-', 'X');
        bar.jump('a', '1.80', 2, 'O');
      },
    ],
    [
      'TRIAL_TAKEN',
      (bar) => {
        bar.jump('a', '1.80', 1, 'X');
        bar.jump('a', '1.80', 1, 'O');
      },
    ],
    ['EARLIER_TRIAL_OPEN', (bar) => bar.jump('a', '1.80', 2, 'O')],
    [
      'EARLIER_HEIGHT_OPEN',
      (bar) => {
        bar.enter({ kind: 'bar', height: 183, leavesOut: [] });
        bar.jump('a', '1.83', 1, 'O');
      },
    ],
    ['NOT_A_HEIGHT', (bar) => bar.jump('a', '1.81', 1, 'O')],
    [
      'ABOVE_THE_BAR',
      (bar) => {
        bar.height('1.80', 'O', 'X');
        bar.jump('a', '1.83', 1, 'O');
      },
    ],
    [
      'BAR_NOT_RISING',
      (bar) => {
        bar.height('1.80', 'O', 'O');
        bar.enter({ kind: 'bar', height: 179, leavesOut: [] });
      },
    ],
    [
      'BAR_STEP_TOO_SMALL',
      (bar) => {
        bar.height('1.80', 'O', 'O');
        bar.enter({ kind: 'bar', height: 181, leavesOut: [] });
      },
    ],
    [
      'BAR_STEP_GROWS',
      (bar) => {
        bar.height('1.80', 'O', 'O');
        bar.height('1.83', 'O', 'O');
        bar.enter({ kind: 'bar', height: 187, leavesOut: [186] });
      },
    ],
    [
      'BAR_STEP_NOT_UNIFORM',
      (bar) => {
        bar.height('1.80', 'O', 'O');
        bar.enter({ kind: 'bar', height: 182, leavesOut: [] });
      },
      { combined: true },
    ],
    [
      'AWAITS_REFEREE',
      (bar) => {
        const first = bar.jump('a', '1.80', 1, 'X');
        bar.jump('b', '1.80', 1, 'O');
        bar.enter(correction(first, 'O'));
      },
    ],
  ])('%s', (code, act, changes = {}) => {
    const bar = new Bar(highJumpOf(two, 2, changes));
    act(bar);
    expect(held(bar.verdict)).toBe(code);
    if (bar.verdict?.standing !== 'held') return;
    expect(bar.verdict.hold.message).not.toBe('');
    expect(bar.verdict.hold.remedy).not.toBe('');
    expect(bar.state.questions).toMatchObject([{ about: 'held', hold: code }]);
  });

  it('a jump above the bar counts by itself when what is missing below comes in', () => {
    const bar = new Bar(highJumpOf('1.80 1.83', 2));
    bar.height('1.80', 'O', '.');
    const early = bar.jump('a', '1.83', 1, 'O');
    expect(bar.verdict).toMatchObject({
      hold: {
        code: 'ABOVE_THE_BAR',
        rule: 'WA TR26.4',
        message: expect.stringContaining('bib A, 1.83, trial 1'),
      },
    });
    expect(cells(bar)).toEqual(['O']);
    bar.jump('b', '1.80', 1, 'O');
    expect(bar.state.attempts.get(early)!.standing).toBe('counts');
    expect(cells(bar)).toEqual(['O', 'O']);
    expect(bar.state.questions).toEqual([]);
  });

  it('or when somebody says that the bar is there', () => {
    const bar = new Bar(highJumpOf('1.80 1.83', 2));
    bar.height('1.80', 'O', '.');
    bar.jump('a', '1.83', 1, 'O');
    bar.enter({ kind: 'bar', height: 183, leavesOut: [] });
    expect(cells(bar)).toEqual(['O', 'O']);
  });

  it('a jump at a height that nobody announced counts once the bar was set there', () => {
    const bar = new Bar(highJumpOf('1.80 1.84', 1));
    bar.height('1.80', 'O');
    bar.jump('a', '1.83', 1, 'O');
    expect(held(bar.verdict)).toBe('NOT_A_HEIGHT');
    bar.enter({ kind: 'bar', height: 183, leavesOut: [] });
    expect(cells(bar)).toEqual(['O', 'O']);
    expect(bar.state.heights).toEqual([180, 183, 184]);
  });

  it('the bar where it cannot be, until the referee says that it was', () => {
    const bar = new Bar(highJumpOf('1.80 1.84', 2));
    bar.height('1.80', 'O', 'O');
    const set = bar.enter({ kind: 'bar', height: 181, leavesOut: [] });
    expect(bar.state.heights).toEqual([180, 184]);
    bar.referee({ kind: 'ruling', entry: set, decision: 'count', reason: 'misplaced pegs, all jump it' });
    expect(bar.state.heights).toEqual([180, 181, 184]);
    expect(verticalProgressOf(bar.state).bar).toBe(181);
  });

  it('takes the place of the other jump of the trial when the referee rules so', () => {
    const bar = new Bar(highJumpOf('1.80', 1));
    const first = bar.jump('a', '1.80', 1, 'X');
    const second = bar.jump('a', '1.80', 1, 'O');
    bar.referee({ kind: 'ruling', entry: second, decision: 'count', reason: 'seen by both judges' });
    expect(cells(bar)).toEqual(['O']);
    expect(bar.state.attempts.get(first)!.standing).toBe('displaced');
  });
});

describe('corrections', () => {
  it('an official takes back his own entry until the next competitor acts', () => {
    const bar = new Bar(highJumpOf('1.80', 2));
    const first = bar.jump('a', '1.80', 1, 'X');
    bar.enter({ kind: 'reversal', entry: first, reason: 'wrong key' });
    expect(bar.verdict?.standing).toBe('accepted');
    expect(verticalProgressOf(bar.state).up).toMatchObject({ competitor: 'a', trial: 1 });
  });

  it('leaves what was jumped after it as a question, and not lost', () => {
    const bar = new Bar(highJumpOf('1.80 1.83', 1));
    const first = bar.jump('a', '1.80', 1, 'O');
    bar.height('1.83', 'O');
    bar.referee({ kind: 'reversal', entry: first, reason: 'not his jump' });
    expect(bar.state.questions).toMatchObject([{ hold: 'EARLIER_HEIGHT_OPEN' }]);
    bar.jump('a', '1.80', 1, '-');
    expect(cells(bar)).toEqual(['-', 'O']);
  });

  it('moves jumps from wrong lines and columns in one entry', () => {
    const bar = new Bar(highJumpOf('1.80 1.83', 2));
    const a = bar.jump('a', '1.80', 1, 'O');
    const b = bar.jump('b', '1.80', 1, 'X');
    const at = { height: 180, trial: 1 };
    const moves = [
      { attempt: a, competitor: 'b', ...at },
      { attempt: b, competitor: 'a', ...at },
    ];
    bar.referee({ kind: 'jump-move', moves, reason: 'lines swapped' });
    expect([cells(bar, 0), cells(bar, 1)]).toEqual([['X'], ['O']]);
  });

  it('strikes a jump for which a new trial is granted, and has it taken again', () => {
    const bar = new Bar(highJumpOf('1.80', 1));
    const first = bar.jump('a', '1.80', 1, 'X', { incident: 'WIND_BEFORE_CLEARING' });
    bar.referee({ kind: 'replacement', attempt: first, reason: 'a gust took the bar' });
    expect(verticalProgressOf(bar.state).up).toMatchObject({ competitor: 'a', trial: 1 });
    bar.jump('a', '1.80', 1, 'O');
    expect(cells(bar)).toEqual(['O']);
    expect(bar.state.attempts.get(first)!.standing).toBe('struck');
  });
});

describe('an incident', () => {
  // World Athletics TR26.10, 27.2 and 28.2, from memory but for the pole.
  it('says what it makes of the trial', () => {
    expect(Object.entries(INCIDENTS).map(([code, { outcome }]) => `${code} ${outcome}`)).toEqual([
      'WIND_AFTER_CLEARING cleared',
      'WIND_BEFORE_CLEARING new trial',
      'TOUCHED_WITHOUT_JUMPING failed',
      'NO_ADVANTAGE none',
      'POLE_ON_MATS none',
      'POLE_BROKEN new trial',
    ]);
  });

  it.each([
    ['WIND_AFTER_CLEARING', 'O', 'accepted'],
    ['WIND_AFTER_CLEARING', 'X', 'refused'],
    ['WIND_BEFORE_CLEARING', 'O', 'refused'],
    ['TOUCHED_WITHOUT_JUMPING', 'X', 'accepted'],
    ['TOUCHED_WITHOUT_JUMPING', 'O', 'refused'],
    ['NO_ADVANTAGE', 'O', 'accepted'],
    ['NO_ADVANTAGE', '-', 'refused'],
    ['POLE_BROKEN', 'X', 'refused'],
  ] as const)('%s with %s in a high jump: %s', (incident, letter, standing) => {
    const bar = new Bar(highJumpOf('1.80', 1));
    bar.jump('a', '1.80', 1, letter, { incident });
    expect(bar.verdict?.standing).toBe(standing);
  });
});

describe('a failure under protest', () => {
  /** The third failure is protested; the competitor goes on under protest and clears the next height. */
  function protested(): [Bar, string] {
    const bar = new Bar(highJumpOf('1.80 1.83 1.86', 2));
    bar.height('1.80', 'XX', 'O');
    const id = bar.jump('a', '1.80', 3, 'X', { protested: true, foul: 'BAR' });
    bar.enter({ kind: 'bar', height: 183, leavesOut: [] });
    return [bar, id];
  }

  it('lets its competitor go on, held until it is ruled', () => {
    const [bar] = protested();
    const { calls } = verticalProgressOf(bar.state);
    expect(calls).toMatchObject([
      { competitor: 'a', height: 183, trial: 1, underProtest: true },
      { competitor: 'b', underProtest: false },
    ]);
    bar.jump('a', '1.83', 1, 'O');
    expect(held(bar.verdict)).toBe('AFTER_THREE_FAILURES');
    expect(cells(bar)).toEqual(['XXX']);
    const [ifUpheld] = bar.state.cardIfProtestsSucceed!.competitors;
    expect(ifUpheld!.series).toEqual([['failed', 'failed', 'cleared'], ['cleared']]);
  });

  it.each([
    ['count', ['XXO', 'O'], 0],
    ['dismiss', ['XXX'], 1],
  ] as const)('ruled %s: %j', (decision, expected, questions) => {
    const [bar, id] = protested();
    bar.jump('a', '1.83', 1, 'O');
    bar.referee({ kind: 'ruling', entry: id, decision, reason: 'seen on the video of the jury' });
    expect(cells(bar)).toEqual(expected);
    expect(bar.state.cardIfProtestsSucceed).toBeNull();
    // When it is dismissed, what was jumped under protest waits to be dismissed as well.
    expect(bar.state.questions).toHaveLength(questions);
  });
});
