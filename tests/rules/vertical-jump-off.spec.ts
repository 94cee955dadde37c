import {
  countVertical,
  entriesOfVerticalCard,
  timeAllowedFor,
  verticalProgressOf,
  type HoldCode,
  type Verdict,
  type VerticalSetup,
} from '#rules';
import { Bar, highJumpOf, setupOfCard, units } from './support/bar.js';
import { VERTICAL_CASES } from './support/vertical-sheets.js';

const held = (verdict: Verdict | undefined): HoldCode | undefined =>
  verdict?.standing === 'held' ? verdict.hold.code : undefined;

/** `count` competitors level for first: all cleared the first height, all failed at the second. */
function level(count: number, heights = '1.80 1.85', changes: Partial<VerticalSetup> = {}): Bar {
  const bar = new Bar(highJumpOf(heights, count, changes));
  const [first, second] = heights.split(' ');
  bar.height(first!, ...new Array<string>(count).fill('O'));
  bar.height(second!, ...new Array<string>(count).fill('XXX'));
  return bar;
}

function places(bar: Bar): string {
  return countVertical(bar.state.card)
    .results.map(({ bib, place, equal }) => `${place}${equal ? '=' : ''} ${bib}`)
    .join(', ');
}

/** Where the rules put the bar, round by round, as the tries are entered where they say. */
function barSequence(bar: Bar, ...rounds: readonly string[]): number[] {
  return [...rounds, ''].map((tries, index) => {
    const { jumpOff } = verticalProgressOf(bar.state);
    for (const one of tries.split(' ').filter(Boolean)) {
      const outcome = one.endsWith('O') ? 'cleared' : 'failed';
      const judgement = { outcome, foul: null, incident: null, protested: false } as const;
      const turn = { competitor: one.slice(0, -1), height: jumpOff!.height, trial: index + 1 };
      bar.enter({ kind: 'jump-off', ...turn, ...judgement });
      expect(bar.verdict).toEqual({ standing: 'accepted', notices: [] });
    }
    return jumpOff!.height;
  });
}

describe('a jump-off', () => {
  it('is due when those level for first are out', () => {
    const bar = level(3);
    const progress = verticalProgressOf(bar.state);
    expect(progress).toMatchObject({ phase: 'jump-off', awaits: 'jump', bar: 185 });
    expect(progress.calls.map(({ competitor, jumpOff }) => `${competitor} ${jumpOff}`)).toEqual([
      'a true',
      'b true',
      'c true',
    ]);
    // Three are in it: a minute and a half (WA TR25.17, from memory).
    expect(timeAllowedFor(bar.state, progress.up!)).toMatchObject({ seconds: 90, left: 3 });
  });

  it('is not held by those who did not clear a height, in a qualification, or where first place is shared', () => {
    const phases = [
      new Bar(highJumpOf('1.80', 2)),
      level(2, '1.80 1.85', { stage: 'qualification', qualifying: { standard: 190, fill: 1 } }),
      level(2, '1.80 1.85', { tieForFirst: 'shared' }),
    ].map((bar, index) => {
      if (index === 0) bar.height('1.80', 'XXX', 'XXX');
      return verticalProgressOf(bar.state).phase;
    });
    expect(phases).toEqual(['complete', 'complete', 'complete']);
  });

  // The example of the rule book (V01, WA TR26.8 and 26.9, recalled): 1.91 all fail, 1.89 C out, 1.91 B wins.
  it('goes down when all fail and up when more than one clears', () => {
    const { card } = VERTICAL_CASES.find(({ name }) => name === 'rules-V01.json')!;
    const bar = new Bar(setupOfCard({ ...card, jumpOff: [] }));
    for (const body of entriesOfVerticalCard({ ...card, jumpOff: [] }, (bib) => `k${bib}`)) bar.referee(body);
    expect(barSequence(bar, 'kAX kBX kCX', 'kAO kBO kCX', 'kAX kBO').slice(0, 3)).toEqual([191, 189, 191]);
    expect(places(bar)).toBe('1 B, 2 A, 3 C, 4 D');
    expect(verticalProgressOf(bar.state)).toMatchObject({ phase: 'complete', jumpOff: { phase: 'decided' } });
  });

  // V10, from memory: 5 cm steps in the pole vault.
  it('of a pole vault: 4.90, 4.85, 4.90, 4.85', () => {
    const bar = level(2, '4.80 4.90', { event: 'pole-vault' });
    expect(barSequence(bar, 'aX bX', 'aO bO', 'aX bX')).toEqual([490, 485, 490, 485]);
  });

  // V11, from memory: high schools go by one inch from the height at which they failed.
  it('of a school high jump: 6-04, 6-03, 6-02', () => {
    const bar = level(2, '6-02.00 6-04.00', { rules: 'NFHS', unit: 'qin' });
    const expected = ['6-04.00', '6-03.00', '6-02.00'].map(units);
    expect(barSequence(bar, 'aX bX', 'aX bX')).toEqual(expected);
  });

  it('starts where they failed under NFHS, at the next height under WA', () => {
    const starts = (['WA', 'NFHS'] as const).map((rules) => {
      const bar = new Bar(highJumpOf('1.80 1.85 1.88', 2, { rules }));
      bar.height('1.80', 'O', 'O');
      bar.height('1.85', '-', '-');
      bar.height('1.88', 'XXX', 'XXX');
      return verticalProgressOf(bar.state).jumpOff!.height;
    });
    expect(starts).toEqual([185, 188]);
  });

  it('starts a step above the last announced height when that was cleared', () => {
    const bar = new Bar(highJumpOf('1.80', 2));
    bar.height('1.80', 'O', 'O');
    bar.enter({ kind: 'bar', height: 185, leavesOut: [] });
    bar.height('1.85', 'r', 'r');
    expect(verticalProgressOf(bar.state).jumpOff).toMatchObject({ phase: 'due', height: 185, round: 1 });
  });

  it('says when the first of a round jumps where the rules do not put the bar', () => {
    const bar = level(2);
    bar.jumpOff(1, '1.83', 'aO');
    expect(bar.verdict).toEqual({ standing: 'accepted', notices: ['NOT_THE_RULE_HEIGHT'] });
    bar.jumpOff(1, '1.83', 'bO');
    expect(bar.verdict).toEqual({ standing: 'accepted', notices: [] });
    // Both cleared: two centimetres up from where they jumped.
    expect(verticalProgressOf(bar.state).bar).toBe(185);
  });

  // V09 and WA TR26.9, from memory.
  it('is lost by who gives it up, and won without a jump', () => {
    const bar = level(2);
    bar.jumpOff(1, '1.85', 'ar');
    expect(verticalProgressOf(bar.state)).toMatchObject({ phase: 'complete', jumpOff: { remaining: ['b'] } });
    expect(places(bar)).toBe('1 B, 2 A');
  });

  // WA TR26.8.4, from memory: those concerned may leave the tie, before or during the jump-off.
  it('declined leaves first place shared, at the start or on the way', () => {
    const bar = level(3);
    bar.enter({ kind: 'jump-off-declined', reason: 'all three agree' });
    expect(verticalProgressOf(bar.state)).toMatchObject({
      phase: 'complete',
      jumpOff: { phase: 'declined' },
    });
    expect(places(bar)).toBe('1= A, 1= B, 1= C');
    const onTheWay = level(3);
    onTheWay.jumpOff(1, '1.85', 'aO bO cX');
    onTheWay.enter({ kind: 'jump-off-declined', reason: 'a and b agree' });
    expect(places(onTheWay)).toBe('1= A, 1= B, 3 C');
    expect(verticalProgressOf(onTheWay.state).calls).toEqual([]);
  });

  it('is declined between two rounds only', () => {
    const bar = level(2);
    bar.jumpOff(1, '1.85', 'aO');
    bar.enter({ kind: 'jump-off-declined', reason: 'both agree' });
    expect(bar.verdict).toMatchObject({ refusal: { code: 'JUMP_OFF_ROUND_OPEN' } });
    bar.jumpOff(1, '1.85', 'bO');
    bar.enter({ kind: 'jump-off-declined', reason: 'both agree' });
    expect(bar.verdict?.standing).toBe('accepted');
  });

  it('has to be held or declined before the result is official', () => {
    const bar = level(2);
    bar.referee({ kind: 'sign-off', incomplete: null });
    expect(bar.verdict).toMatchObject({ refusal: { code: 'NOT_COMPLETE' } });
    bar.enter({ kind: 'jump-off-declined', reason: 'both agree' });
    bar.referee({ kind: 'sign-off', incomplete: null });
    expect(verticalProgressOf(bar.state).phase).toBe('official');
  });

  it('counts a better height as the mark', () => {
    const bar = level(2);
    bar.jumpOff(1, '1.85', 'aO bX');
    expect(countVertical(bar.state.card).results[0]).toMatchObject({ bib: 'A', mark: '1.85' });
  });

  it('keeps, and does not count, what somebody disqualified later jumped in it', () => {
    const bar = level(3);
    bar.jumpOff(1, '1.85', 'aO bX cO');
    bar.referee({ kind: 'disqualification', competitor: 'c', rule: 'TR7.1', reason: 'conduct' });
    expect(bar.state.card.jumpOff[0]!.tries).toHaveLength(3);
    expect(verticalProgressOf(bar.state)).toMatchObject({ phase: 'complete' });
    expect(bar.state.questions).toEqual([]);
  });
});

describe('what is held in a jump-off', () => {
  it.each<[HoldCode, (bar: Bar) => void]>([
    ['NOT_IN_JUMP_OFF', (bar) => bar.jumpOff(1, '1.85', 'cO')],
    [
      'OUT_OF_JUMP_OFF',
      (bar) => {
        bar.jumpOff(1, '1.85', 'aO bX');
        bar.jumpOff(2, '1.87', 'bO');
      },
    ],
    ['EARLIER_TRIAL_OPEN', (bar) => bar.jumpOff(2, '1.85', 'aO')],
    [
      'TRIAL_TAKEN',
      (bar) => {
        bar.jumpOff(1, '1.85', 'aX');
        bar.jumpOff(1, '1.83', 'aO');
      },
    ],
    [
      'ANOTHER_JUMP_OFF_HEIGHT',
      (bar) => {
        bar.jumpOff(1, '1.85', 'aX');
        bar.jumpOff(1, '1.83', 'bO');
      },
    ],
    [
      'JUMP_OFF_DECLINED',
      (bar) => {
        bar.enter({ kind: 'jump-off-declined', reason: 'both agree' });
        bar.jumpOff(1, '1.85', 'aO');
      },
    ],
    [
      'DISQUALIFIED',
      (bar) => {
        bar.referee({ kind: 'disqualification', competitor: 'a', rule: 'TR7.1', reason: 'conduct' });
        bar.jumpOff(1, '1.85', 'aO');
      },
    ],
  ])('%s', (code, act) => {
    const bar = new Bar(highJumpOf('1.80 1.85', 3));
    bar.height('1.80', 'O', 'O', 'XO');
    bar.height('1.85', 'XXX', 'XXX', 'XXX');
    act(bar);
    expect(held(bar.verdict)).toBe(code);
    expect(bar.state.questions).toMatchObject([{ hold: code }]);
  });

  it('counts by itself when the tie comes about', () => {
    const bar = new Bar(highJumpOf('1.80 1.85', 2));
    bar.height('1.80', 'O', 'XO');
    bar.height('1.85', 'XXX', 'XXX');
    bar.jumpOff(1, '1.85', 'aX');
    expect(held(bar.verdict)).toBe('NOT_IN_JUMP_OFF');
    const wrong = [...bar.state.attempts.values()].find((one) => one.competitor === 'b' && one.trial === 1)!;
    const second = [...bar.state.attempts.values()].find((one) => one.competitor === 'b' && one.trial === 2)!;
    bar.referee({ kind: 'reversal', entry: second.id, reason: 'there was only one trial' });
    const judgement = { outcome: 'cleared', foul: null, incident: null, protested: false } as const;
    bar.referee({ kind: 'jump-correction', attempt: wrong.id, ...judgement, reason: 'it was cleared' });
    expect(bar.state.card.jumpOff).toMatchObject([{ tries: [{ bib: 'A', trial: 'failed' }] }]);
  });
});
