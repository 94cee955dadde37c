import {
  heightsWithoutEntry,
  progressionProblems,
  timeAllowedFor,
  verticalProgressOf,
  type NoticeCode,
  type Verdict,
} from '#rules';
import { Bar, highJumpOf, units } from './support/bar.js';

function calls(bar: Bar): string[] {
  return verticalProgressOf(bar.state).calls.map(
    ({ competitor, height, trial }) => `${competitor} ${height}/${trial}`,
  );
}

const notices = (verdict: Verdict | undefined): readonly NoticeCode[] =>
  verdict?.standing === 'accepted' ? verdict.notices : [];

describe('who is up', () => {
  // WA TR25.6 and 26: in the order of competition, trials taken in turns at the height.
  it('all first trials, then the second ones of those who failed, then the third', () => {
    const bar = new Bar(highJumpOf('1.80 1.85', 3));
    expect(calls(bar)).toEqual(['a 180/1', 'b 180/1', 'c 180/1']);
    bar.jump('a', '1.80', 1, 'X');
    bar.jump('b', '1.80', 1, 'O');
    expect(calls(bar)).toEqual(['c 180/1', 'a 180/2']);
    bar.jump('c', '1.80', 1, 'X');
    bar.jump('a', '1.80', 2, 'X');
    expect(calls(bar)).toEqual(['c 180/2', 'a 180/3']);
    bar.jump('c', '1.80', 2, 'O');
    bar.jump('a', '1.80', 3, 'O');
    expect(calls(bar)).toEqual(['a 185/1', 'b 185/1', 'c 185/1']);
  });

  it('nobody who passes the height, did not start, retired or has failed three times', () => {
    const bar = new Bar(highJumpOf('1.80 1.85 1.90', 5));
    bar.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
    bar.height('1.80', '.', 'XXX', 'r', '-', 'O');
    bar.jump('d', '1.85', 1, '-');
    expect(calls(bar)).toEqual(['e 185/1']);
    expect(bar.state.competitors.map(({ condition, atBar }) => `${condition}, ${atBar}`)).toEqual([
      'did not start, out',
      'three failures, out',
      'retired, out',
      'in, passing',
      'in, to jump',
    ]);
  });

  it('first whom an official moved for this trial, then the others in their order', () => {
    const bar = new Bar(highJumpOf('1.80', 3));
    const moved = { height: 180, trial: 1, competitors: ['c'], reason: 'called in the long jump' };
    bar.enter({ kind: 'jump-order', ...moved });
    expect(calls(bar)).toEqual(['c 180/1', 'a 180/1', 'b 180/1']);
  });

  it('somebody out of turn is accepted, and it is said', () => {
    const bar = new Bar(highJumpOf('1.80', 2));
    bar.jump('b', '1.80', 1, 'O');
    expect(bar.verdict).toEqual({ standing: 'accepted', notices: ['OUT_OF_TURN'] });
  });
});

describe('the bar', () => {
  it('rises along the announced heights when all have taken their trials', () => {
    const bar = new Bar(highJumpOf('1.80 1.85 1.90', 2));
    expect(verticalProgressOf(bar.state)).toMatchObject({ phase: 'not started', bar: 180, nextHeight: 185 });
    bar.height('1.80', 'O', '-');
    expect(verticalProgressOf(bar.state)).toMatchObject({ phase: 'running', bar: 185, nextHeight: 190 });
    bar.height('1.85', '-', '-');
    expect(verticalProgressOf(bar.state)).toMatchObject({ bar: 190, nextHeight: null });
  });

  it('does not come down for a trial that is missing below it', () => {
    const bar = new Bar(highJumpOf('1.80 1.85', 2));
    bar.height('1.80', 'O', '.');
    bar.enter({ kind: 'bar', height: 185, leavesOut: [] });
    expect(notices(bar.verdict)).toEqual(['TRIALS_OUTSTANDING']);
    const progress = verticalProgressOf(bar.state);
    expect(progress).toMatchObject({ bar: 185, up: { competitor: 'a' } });
    expect(progress.outstanding).toMatchObject([{ competitor: 'b', height: 180, trial: 1 }]);
    expect(bar.state.competitors[1]!.atBar).toBe('behind');
    // The forgotten pass comes in late and is where it belongs.
    bar.jump('b', '1.80', 1, '-');
    expect(calls(bar)).toEqual(['a 185/1', 'b 185/1']);
  });

  it('waits to be set when somebody is still in after the last announced height', () => {
    const bar = new Bar(highJumpOf('1.80', 2));
    bar.height('1.80', 'O', 'O');
    expect(verticalProgressOf(bar.state)).toMatchObject({ phase: 'running', awaits: 'height', up: null });
    bar.enter({ kind: 'bar', height: 185, leavesOut: [] });
    expect(notices(bar.verdict)).toEqual(['NOT_ANNOUNCED']);
    expect(bar.state.card.heights).toEqual([180, 185]);
    expect(calls(bar)).toEqual(['a 185/1', 'b 185/1']);
  });

  it('may leave out heights at which nobody jumped, for all', () => {
    const bar = new Bar(highJumpOf('1.60 1.65 1.70 1.75', 2));
    bar.jump('b', '1.60', 1, '-');
    expect(heightsWithoutEntry(bar.state, 170)).toEqual([165]);
    bar.enter({ kind: 'bar', height: 170, leavesOut: [160, 165] });
    expect(bar.verdict).toEqual({ standing: 'accepted', notices: [] });
    expect(bar.state.heights).toEqual([170, 175]);
    // The pass told for a height that is no more says nothing, and asks nothing.
    expect(bar.state.questions).toEqual([]);
    bar.height('1.70', 'O', 'O');
    expect(bar.state.card.competitors.map(({ series }) => series)).toEqual([[['cleared']], [['cleared']]]);
  });

  // WA TR26.4, read in an older text: until one is left and has won; NCAA 6-5-2 and NFHS 6-4-9 alike.
  it('is where the winner wants it, once one is left and has won', () => {
    const bar = new Bar(highJumpOf('1.80 1.85 1.88', 2));
    bar.height('1.80', 'O', 'O');
    bar.height('1.85', 'O', 'XXX');
    expect(verticalProgressOf(bar.state).winner).toEqual({ competitor: 'a', choosesHeight: true });
    bar.enter({ kind: 'bar', height: 196, leavesOut: [188] });
    expect(bar.verdict).toEqual({ standing: 'accepted', notices: [] });
    bar.jump('a', '1.96', 1, 'O');
    expect(bar.state.card.heights).toEqual([180, 185, 196]);
    expect(verticalProgressOf(bar.state)).toMatchObject({ awaits: 'height', winner: { competitor: 'a' } });
  });

  it('rises as before while the one who is left has not won', () => {
    const bar = new Bar(highJumpOf('1.80 1.85 1.88', 2));
    bar.height('1.80', 'O', 'XO');
    bar.height('1.85', 'XXX', 'X-');
    expect(verticalProgressOf(bar.state)).toMatchObject({ winner: null, left: ['b'] });
    bar.enter({ kind: 'bar', height: 196, leavesOut: [188] });
    expect(bar.verdict).toMatchObject({ hold: { code: 'BAR_STEP_GROWS' } });
  });

  it('is nobody’s to choose in a combined event', () => {
    const bar = new Bar(highJumpOf('1.80 1.83', 2, { combined: true }));
    bar.height('1.80', 'O', 'XXX');
    expect(verticalProgressOf(bar.state).winner).toEqual({ competitor: 'a', choosesHeight: false });
  });
});

describe('announced heights', () => {
  const rules = highJumpOf('1.80', 1);
  const problems = (heights: string, changes: object = {}): string[] =>
    progressionProblems({ ...rules, ...changes }, heights.split(' ').map(units)).map(
      ({ index, code }) => `${index} ${code}`,
    );

  // The heights of two championship finals, from their published results.
  it.each([
    ['1.65 1.70 1.75 1.79 1.82 1.85 1.87 1.89', {}],
    ['2.18 2.22 2.26 2.30 2.33 2.35 2.37 2.39 2.41', {}],
    ['1.80 1.83 1.86 1.89', { combined: true }],
    ['4.00 4.10 4.20', { combined: true, event: 'pole-vault' }],
    ['5-02.00 5-04.00 5-06.00 5-07.00', { unit: 'qin', rules: 'NFHS', edition: '2025' }],
  ])('%s may be', (heights, changes) => {
    expect(problems(heights, changes)).toEqual([]);
  });

  // WA TR26.4: at least 2 and 5 cm, never growing; 3 and 10 cm in combined events.
  it.each([
    ['1.80 1.81', {}, ['1 BAR_STEP_TOO_SMALL']],
    ['1.80 1.82 1.85', {}, ['2 BAR_STEP_GROWS']],
    ['1.80 1.80', {}, ['1 BAR_NOT_RISING']],
    ['4.00 4.04', { event: 'pole-vault' }, ['1 BAR_STEP_TOO_SMALL']],
    ['1.80 1.83 1.85', { combined: true }, ['2 BAR_STEP_NOT_UNIFORM']],
    ['4.00 4.05', { combined: true, event: 'pole-vault' }, ['1 BAR_STEP_NOT_UNIFORM']],
  ])('%s %j may not be', (heights, changes, expected) => {
    expect(problems(heights, changes)).toEqual(expected);
  });
});

describe('the time allowed', () => {
  function time(bar: Bar): string {
    const { seconds, because } = timeAllowedFor(bar.state, verticalProgressOf(bar.state).up!);
    return `${seconds} ${because}`;
  }

  // WA TR25.17, the table of 2020 from memory: high jump 60, 90, 180 s; consecutive 120 s; a first trial 60 s.
  it('goes by who is left when the bar is set, and changes at the next height only', () => {
    const bar = new Bar(highJumpOf('1.80 1.85 1.88 1.90', 4));
    expect(time(bar)).toBe('60 first trial');
    bar.height('1.80', 'O', 'O', 'O', 'O');
    expect(time(bar)).toBe('60 more than three left');
    bar.jump('a', '1.85', 1, 'X');
    bar.jump('b', '1.85', 1, 'r');
    bar.jump('c', '1.85', 1, 'X');
    bar.jump('d', '1.85', 1, 'O');
    // Three are left, but the bar was set for four.
    expect(time(bar)).toBe('60 more than three left');
    bar.jump('a', '1.85', 2, 'O');
    bar.jump('c', '1.85', 2, 'O');
    expect(time(bar)).toBe('90 two or three left');
  });

  it('is longer for two trials in a row at one height, not across heights', () => {
    const bar = new Bar(highJumpOf('1.80 1.85', 2));
    bar.height('1.80', 'O', 'O');
    bar.jump('a', '1.85', 1, 'O');
    bar.jump('b', '1.85', 1, 'X');
    expect(time(bar)).toBe('120 consecutive trials');
    const alone = new Bar(highJumpOf('1.80 1.85 1.90', 2));
    alone.height('1.80', 'O', 'O');
    alone.jump('b', '1.85', 1, '-');
    alone.jump('b', '1.90', 1, '-');
    alone.jump('a', '1.85', 1, 'O');
    expect(time(alone)).toBe('90 two or three left');
  });

  it('counts one who is out but could be in a jump-off', () => {
    const bar = new Bar(highJumpOf('1.80 1.85 1.88', 2));
    bar.height('1.80', 'O', 'O');
    bar.height('1.85', 'XXX', 'X-');
    // Level on 1.80 at the first trial: if b fails as well they jump off.
    expect(time(bar)).toBe('90 two or three left');
    const apart = new Bar(highJumpOf('1.80 1.85 1.88', 2));
    apart.height('1.80', 'XO', 'O');
    apart.height('1.85', 'XXX', 'O');
    expect(time(apart)).toBe('180 one left');
  });

  it('counts from when the uprights stand as asked for, in the pole vault', () => {
    const bar = new Bar(highJumpOf('4.00 4.10', 2, { event: 'pole-vault' }));
    bar.height('4.00', 'O', 'O');
    const { up } = verticalProgressOf(bar.state);
    expect(timeAllowedFor(bar.state, up!)).toMatchObject({
      seconds: 120,
      startsWhen: 'uprights set',
      left: 2,
    });
  });

  // WA TR25.17 for combined events, from memory: one left 120 s in the high jump, 180 s in the pole vault.
  it.each([
    ['high-jump', 120],
    ['pole-vault', 180],
  ] as const)('is shorter for one left in a combined %s: %d s', (event, seconds) => {
    const bar = new Bar(highJumpOf('1.80 1.90', 1, { event, combined: true }));
    bar.height('1.80', 'O');
    expect(time(bar)).toBe(`${seconds} one left`);
  });

  // NFHS 6-2-2 as of 2025: pole vault 3 minutes for two or three, 5 for the winner.
  it.each([
    [2, '180 two or three left'],
    [1, '300 one left'],
  ])('of a school pole vault with %d left: %s', (count, expected) => {
    const school = { event: 'pole-vault', rules: 'NFHS' } as const;
    const bar = new Bar(highJumpOf('3.00 3.20', count, school));
    bar.height('3.00', ...new Array<string>(count).fill('O'));
    expect(time(bar)).toBe(expected);
  });
});

describe('the uprights', () => {
  it('stand for each vaulter as he last asked, and every jump keeps how they stood', () => {
    const bar = new Bar(highJumpOf('4.00', 2, { event: 'pole-vault' }));
    bar.enter({ kind: 'uprights', competitor: 'a', behindZeroCm: 60 });
    const first = bar.jump('a', '4.00', 1, 'X');
    bar.enter({ kind: 'uprights', competitor: 'a', behindZeroCm: 75 });
    const second = bar.jump('a', '4.00', 2, 'O');
    expect([first, second].map((id) => bar.state.attempts.get(id)!.behindZeroCm)).toEqual([60, 75]);
    expect(bar.state.competitors.map(({ behindZeroCm }) => behindZeroCm)).toEqual([75, null]);
  });

  // WA TR28, from memory: from the zero line to 80 cm behind it.
  it('asked for outside what the rule allows are noted, and it is said', () => {
    const bar = new Bar(highJumpOf('4.00', 1, { event: 'pole-vault' }));
    bar.enter({ kind: 'uprights', competitor: 'a', behindZeroCm: 81 });
    expect(bar.verdict).toEqual({ standing: 'accepted', notices: ['UPRIGHTS_OUTSIDE_RULE'] });
  });
});
