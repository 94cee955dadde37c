import { callsOf, entriesOfCard, progressOf, type HoldCode, type RefusalCode, type Verdict } from '#rules';
import { Circle, correction, discus, seriesOf, trial } from './support/competition.js';

const refused = (verdict: Verdict | undefined): RefusalCode | undefined =>
  verdict?.standing === 'refused' ? verdict.refusal.code : undefined;
const held = (verdict: Verdict | undefined): HoldCode | undefined =>
  verdict?.standing === 'held' ? verdict.hold.code : undefined;

/** Ten throwers, best first: 60.00, 59.00, … in round 1, fouls in rounds 2 and 3. */
function afterThreeRounds(): Circle {
  const circle = new Circle(discus(10));
  circle.round(1, ...Array.from({ length: 10 }, (_, at) => `${60 - at}.00`));
  circle.round(2, ...new Array<string>(10).fill('X'));
  circle.round(3, ...new Array<string>(10).fill('X'));
  return circle;
}

describe('who is up', () => {
  it('follows the order of competition and moves on with every trial', () => {
    const circle = new Circle(discus(3));
    expect(progressOf(circle.state)).toMatchObject({
      phase: 'not started',
      up: { competitor: 'a', round: 1 },
    });
    circle.trial('a', 1, '50.00');
    expect(progressOf(circle.state)).toMatchObject({
      phase: 'running',
      up: { competitor: 'b' },
      next: { competitor: 'c' },
      then: { competitor: 'a', round: 2 },
    });
  });

  it('turns the order round after the third round: the leader throws last (WA TR25.6)', () => {
    const circle = afterThreeRounds();
    expect([...callsOf(circle.state)].slice(0, 8).map((call) => call.competitor)).toEqual([...'hgfedcba']);
  });

  it('takes one flight through its rounds before the next, and one order after the cut', () => {
    const setup = discus(4);
    const flights = ['1', '2', '1', '2'];
    const circle = new Circle({
      ...setup,
      competitors: setup.competitors.map((competitor, at) => ({ ...competitor, flight: flights[at]! })),
    });
    const calls = [...callsOf(circle.state)].map((call) => `${call.competitor}${call.round}`);
    expect(calls.slice(0, 12)).toEqual([
      'a1',
      'c1',
      'a2',
      'c2',
      'a3',
      'c3',
      'b1',
      'd1',
      'b2',
      'd2',
      'b3',
      'd3',
    ]);
    expect(calls.slice(12, 16).sort()).toEqual(['a4', 'b4', 'c4', 'd4']);
  });

  it('calls first whom an official moved in this round, then the others in their order', () => {
    const circle = new Circle(discus(3));
    circle.enter({ kind: 'order', round: 1, competitors: ['c'], reason: 'also in the long jump' });
    expect([...callsOf(circle.state)].slice(0, 4).map((c) => `${c.competitor}${c.round}`)).toEqual([
      'c1',
      'a1',
      'b1',
      'a2',
    ]);
  });

  it('calls nobody who did not start, retired or is out', () => {
    const circle = new Circle(discus(3));
    circle.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
    circle.trial('b', 1, 'r');
    circle.referee({ kind: 'disqualification', competitor: 'c', rule: 'TR7.1', reason: 'conduct' });
    expect(progressOf(circle.state)).toMatchObject({ phase: 'complete', up: null, remaining: 0 });
  });
});

describe('what is accepted', () => {
  it('a trial out of turn, and says so', () => {
    const circle = new Circle(discus(3));
    circle.trial('b', 1, '50.00');
    expect(circle.verdict).toEqual({ standing: 'accepted', notices: ['OUT_OF_TURN'] });
  });

  it('a mark far outside what is thrown, and says so', () => {
    const circle = new Circle(discus(1));
    circle.trial('a', 1, '581.00');
    expect(circle.verdict).toEqual({ standing: 'accepted', notices: ['FAR_OUTSIDE'] });
  });

  it('a quarter inch in a school discus, which is measured in whole inches, and says so', () => {
    const circle = new Circle(discus(1, { rules: 'NFHS', edition: '2025', unit: 'qin' }));
    circle.enter(trial('a', 1, 'X', { outcome: 'valid', mark: (150 * 12 + 6) * 4 + 1 }));
    expect(circle.verdict).toEqual({ standing: 'accepted', notices: ['FINER_THAN_MEASURED'] });
  });

  it('a wind that comes in after the mark', () => {
    const circle = new Circle(discus(1, { event: 'long-jump' }));
    const jump = circle.trial('a', 1, '6.10', { wind: 'pending' });
    expect(circle.state.card.competitors[0]!.series[0]).toEqual({ outcome: 'valid', mark: 610, wind: null });
    circle.enter({ kind: 'wind', attempt: jump, wind: -3 });
    expect(circle.state.card.competitors[0]!.series[0]!.wind).toBe(-3);
  });

  it('the trial again after a replacement, and keeps the one that was struck', () => {
    const circle = new Circle(discus(2));
    const first = circle.trial('a', 1, 'X');
    circle.referee({ kind: 'replacement', attempt: first, reason: 'hindered by a loose net' });
    expect(progressOf(circle.state).up).toMatchObject({ competitor: 'a', round: 1 });
    circle.trial('a', 1, '44.00');
    expect(seriesOf(circle.state, 'a')[0]).toBe(4400);
    expect(circle.state.attempts.get(first)!.standing).toBe('struck');
  });
});

describe('corrections', () => {
  it('an official takes back his own entry until the next competitor acts', () => {
    const circle = new Circle(discus(2));
    const first = circle.trial('a', 1, '50.00');
    circle.enter({ kind: 'reversal', entry: first, reason: 'wrong key' });
    expect(circle.verdict?.standing).toBe('accepted');
    expect(seriesOf(circle.state, 'a')[0]).toBeNull();
  });

  it('after the next competitor has acted it is a request, which the referee grants or not', () => {
    const circle = new Circle(discus(2));
    const first = circle.trial('a', 1, '50.00');
    circle.trial('b', 1, '49.00');
    const request = circle.enter(correction(first, '51.00'));
    expect(held(circle.verdict)).toBe('AWAITS_REFEREE');
    expect(seriesOf(circle.state, 'a')[0]).toBe(5000);
    circle.referee({ kind: 'ruling', entry: request, decision: 'count', reason: 'tape read again' });
    expect(seriesOf(circle.state, 'a')[0]).toBe(5100);
    expect(circle.state.questions).toEqual([]);
  });

  it('somebody else’s entry is not an official’s to change', () => {
    const circle = new Circle(discus(1));
    const first = circle.trial('a', 1, '50.00');
    circle.enter(correction(first, '51.00'), { actor: 'bob' });
    expect(held(circle.verdict)).toBe('AWAITS_REFEREE');
  });

  it('moves marks from wrong lines in one entry', () => {
    const circle = new Circle(discus(3));
    const a = circle.trial('a', 1, '50.00');
    const b = circle.trial('b', 1, '40.00');
    circle.referee({
      kind: 'move',
      moves: [
        { attempt: a, competitor: 'b', round: 1 },
        { attempt: b, competitor: 'a', round: 1 },
      ],
      reason: 'lines swapped',
    });
    expect([seriesOf(circle.state, 'a')[0], seriesOf(circle.state, 'b')[0]]).toEqual([4000, 5000]);
  });

  it('refuses a move that puts two trials into one round', () => {
    const circle = new Circle(discus(2));
    const a = circle.trial('a', 1, '50.00');
    circle.trial('b', 1, '40.00');
    circle.referee({
      kind: 'move',
      moves: [{ attempt: a, competitor: 'b', round: 1 }],
      reason: 'wrong line',
    });
    expect(refused(circle.verdict)).toBe('ROUND_CLASH');
  });
});

describe('the cut', () => {
  it('holds a trial of somebody who is not through, and counts it once the referee admits him', () => {
    const circle = afterThreeRounds();
    const late = circle.trial('i', 4, '61.00');
    expect(held(circle.verdict)).toBe('NOT_THROUGH');
    circle.referee({
      kind: 'admission',
      competitor: 'i',
      after: 3,
      admittedBy: 'R',
      reason: 'hindered in round 2',
    });
    expect(circle.state.attempts.get(late)!.standing).toBe('counts');
  });

  it('holds a late trial that would change a cut already made', () => {
    const circle = new Circle(discus(9));
    circle.round(1, ...Array.from({ length: 9 }, (_, at) => `${60 - at}.00`));
    circle.round(2, ...new Array<string>(9).fill('X'));
    circle.round(3, ...new Array<string>(8).fill('X'));
    circle.trial('h', 4, '50.00');
    circle.trial('i', 3, '53.50');
    expect(circle.verdict).toMatchObject({
      hold: { code: 'CHANGES_A_CUT' },
      cutChanges: [{ after: 3, wouldBeIn: ['i'], wouldBeOut: ['h'] }],
    });
  });

  it('takes a late trial that changes nothing', () => {
    const circle = new Circle(discus(9));
    circle.round(1, ...Array.from({ length: 9 }, (_, at) => `${60 - at}.00`));
    circle.round(2, ...new Array<string>(9).fill('X'));
    circle.round(3, ...new Array<string>(8).fill('X'));
    circle.trial('h', 4, '50.00');
    circle.trial('i', 3, '52.50');
    expect(circle.verdict).toEqual({ standing: 'accepted', notices: [] });
  });

  it('holds a correction that would change a cut already made, and says whom it would bring in and put out', () => {
    const circle = afterThreeRounds();
    circle.trial('h', 4, '50.00');
    const mark = [...circle.state.attempts.values()].find((a) => a.competitor === 'i' && a.round === 1)!.id;
    const change = circle.referee(correction(mark, '53.50'));
    expect(circle.verdict).toMatchObject({
      standing: 'held',
      hold: { code: 'CHANGES_A_CUT' },
      cutChanges: [{ after: 3, wouldBeIn: ['i'], wouldBeOut: ['h'] }],
    });
    circle.referee({ kind: 'ruling', entry: change, decision: 'count', reason: 'tape misread' });
    expect(circle.state.questions).toMatchObject([{ about: 'held', hold: 'NOT_THROUGH' }]);
    circle.referee({
      kind: 'admission',
      competitor: 'h',
      after: 3,
      admittedBy: 'R',
      reason: 'already called',
    });
    expect(circle.state.questions).toEqual([]);
    expect(seriesOf(circle.state, 'h')[3]).toBe(5000);
  });
});

describe('what is held because it may have happened', () => {
  it.each<[HoldCode, (circle: Circle) => void]>([
    [
      'NOT_STARTED',
      (circle) => {
        circle.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
        circle.trial('a', 1, '50.00');
      },
    ],
    [
      'DISQUALIFIED',
      (circle) => {
        circle.referee({ kind: 'disqualification', competitor: 'a', rule: 'TR7.1', reason: 'conduct' });
        circle.trial('a', 1, '50.00');
      },
    ],
    [
      'AFTER_RETIRING',
      (circle) => {
        circle.trial('a', 1, 'r');
        circle.trial('a', 2, '50.00');
      },
    ],
    [
      'ROUND_TAKEN',
      (circle) => {
        circle.trial('a', 1, '50.00');
        circle.trial('a', 1, '51.00');
      },
    ],
    ['EARLIER_ROUND_OPEN', (circle) => circle.trial('a', 2, '50.00')],
    ['WRONG_IMPLEMENT', (circle) => circle.trial('b', 1, '50.00', { implementGrams: 1000 })],
    [
      'SIGNED_OFF',
      (circle) => {
        circle.referee({ kind: 'sign-off', incomplete: 'lightning' });
        circle.trial('a', 1, '50.00');
      },
    ],
  ])('%s', (code, act) => {
    const setup = discus(2);
    const circle = new Circle({
      ...setup,
      competitors: setup.competitors.map((c) => ({ ...c, implementGrams: 2000 })),
    });
    act(circle);
    expect(held(circle.verdict)).toBe(code);
    expect(circle.state.questions).toHaveLength(1);
    expect(circle.state.card.competitors.flatMap((c) => c.series).filter((t) => t?.mark === 5100)).toEqual(
      [],
    );
  });

  it('a trial after the standard, in a qualification', () => {
    const plan = { ...discus(1).plan, rounds: 3, cuts: [], reorderAfter: [] };
    const circle = new Circle(
      discus(1, { stage: 'qualification', qualifying: { standard: 5800, fill: 0 }, plan }),
    );
    circle.trial('a', 1, '58.00');
    circle.trial('a', 2, '59.00');
    expect(held(circle.verdict)).toBe('AFTER_STANDARD');
  });

  it('counts by itself when what was missing comes in', () => {
    const circle = new Circle(discus(1));
    const second = circle.trial('a', 2, '50.00');
    circle.trial('a', 1, 'X');
    expect(circle.state.attempts.get(second)!.standing).toBe('counts');
    expect(circle.state.questions).toEqual([]);
  });

  it('is set aside when the referee dismisses it, and back when the ruling is taken back', () => {
    const circle = new Circle(discus(1));
    const second = circle.trial('a', 2, '50.00');
    const ruling = circle.referee({
      kind: 'ruling',
      entry: second,
      decision: 'dismiss',
      reason: 'warm-up throw',
    });
    expect(circle.state.attempts.get(second)!.standing).toBe('dismissed');
    circle.referee({ kind: 'reversal', entry: ruling, reason: 'it was a trial' });
    expect(circle.state.attempts.get(second)!.standing).toBe('EARLIER_ROUND_OPEN');
  });

  it('takes the place of the other trial of the round when the referee rules so', () => {
    const circle = new Circle(discus(1));
    const first = circle.trial('a', 1, '50.00');
    const second = circle.trial('a', 1, '51.00');
    circle.referee({ kind: 'ruling', entry: second, decision: 'count', reason: 'tape read again' });
    expect(seriesOf(circle.state, 'a')[0]).toBe(5100);
    expect(circle.state.attempts.get(first)!.standing).toBe('displaced');
  });
});

describe('a trial under protest', () => {
  function protested(): [Circle, string] {
    const circle = new Circle(discus(2));
    const id = circle.trial('a', 1, 'X', { protested: 6000, foul: 'SECTOR' });
    circle.trial('b', 1, '55.00');
    return [circle, id];
  }

  it('is a failure for now, with the other standing beside it', () => {
    const [circle] = protested();
    expect(circle.state.card.competitors[0]!.series[0]!.outcome).toBe('foul');
    expect(circle.state.cardIfProtestsSucceed!.competitors[0]!.series[0]).toMatchObject({
      outcome: 'valid',
      mark: 6000,
    });
    expect(circle.state.questions).toMatchObject([{ about: 'protest' }]);
  });

  it.each([
    ['count', 6000],
    ['dismiss', 'foul'],
  ] as const)('ruled %s', (decision, stands) => {
    const [circle, id] = protested();
    circle.referee({ kind: 'ruling', entry: id, decision, reason: 'seen on the video of the jury' });
    expect(seriesOf(circle.state, 'a')[0]).toBe(stands);
    expect(circle.state.cardIfProtestsSucceed).toBeNull();
  });
});

describe('what is refused because it can never be right', () => {
  const long = { event: 'long-jump' } as const;
  it.each<[RefusalCode, string | null, (circle: Circle) => void, object?]>([
    [
      'ID_REUSED',
      'id',
      (c) => {
        c.enter(trial('a', 1, 'X'), { id: 'e0' });
        c.enter(trial('b', 1, 'X'), { id: 'e0' });
      },
    ],
    ['NOT_ALLOWED', null, (c) => c.enter({ kind: 'reinstatement', competitor: 'a', reason: 'so' })],
    [
      'RESULT_OFFICIAL',
      null,
      (c) => {
        c.referee({ kind: 'sign-off', incomplete: 'dark' });
        c.referee({ kind: 'disqualification', competitor: 'a', rule: 'TR7.1', reason: 'conduct' });
      },
    ],
    ['UNKNOWN_COMPETITOR', 'competitor', (c) => c.trial('z', 1, 'X')],
    ['UNKNOWN_ENTRY', 'attempt', (c) => c.referee(correction('none', '50.00'))],
    [
      'WRONG_KIND_OF_ENTRY',
      'attempt',
      (c) => {
        const start = c.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
        c.referee(correction(start, '50.00'));
      },
    ],
    [
      'NOT_IN_FORCE',
      'attempt',
      (c) => {
        const id = c.trial('a', 1, 'X');
        c.enter({ kind: 'reversal', entry: id, reason: 'wrong key' });
        c.referee(correction(id, '50.00'));
      },
    ],
    [
      'NO_QUESTION',
      'entry',
      (c) => {
        const id = c.trial('a', 1, 'X');
        c.referee({ kind: 'ruling', entry: id, decision: 'count', reason: 'so' });
      },
    ],
    [
      'NOT_BY_RULING',
      'decision',
      (c) => {
        const id = c.trial('a', 2, 'X');
        c.referee({ kind: 'ruling', entry: id, decision: 'count', reason: 'so' });
      },
    ],
    ['REASON_MISSING', 'reason', (c) => c.referee(correction(c.trial('a', 1, 'X'), '50.00', ' '))],
    ['ROUND_NOT_IN_PLAN', 'round', (c) => c.trial('a', 7, 'X')],
    [
      'CUT_NOT_IN_PLAN',
      'after',
      (c) => c.referee({ kind: 'admission', competitor: 'a', after: 4, admittedBy: 'J', reason: 'so' }),
    ],
    ['MARK_MISSING', 'mark', (c) => c.trial('a', 1, 'X', { outcome: 'valid' })],
    ['MARK_NOT_EXPECTED', 'mark', (c) => c.trial('a', 1, 'X', { mark: 5000 })],
    ['MARK_NOT_EXPECTED', 'protested', (c) => c.trial('a', 1, '-', { protested: 5000 })],
    ['MARK_OUT_OF_RANGE', 'mark', (c) => c.trial('a', 1, '50.00', { mark: 100_000 })],
    ['MARK_OUT_OF_RANGE', 'mark', (c) => c.trial('a', 1, '50.00', { mark: 0.5 })],
    ['WIND_NOT_MEASURED', 'wind', (c) => c.trial('a', 1, '50.00', { wind: 12 })],
    ['WIND_NOT_EXPECTED', 'wind', (c) => c.trial('a', 1, '-', { wind: 12 }), long],
    ['WIND_OUT_OF_RANGE', 'wind', (c) => c.trial('a', 1, '5.00', { wind: 1000 }), long],
    ['WIND_OUT_OF_RANGE', 'wind', (c) => c.trial('a', 1, '5.00', { wind: -0 }), long],
    ['FOUL_NOT_OF_EVENT', 'foul', (c) => c.trial('a', 1, 'X', { foul: 'TIP' })],
    [
      'HAS_TRIALS',
      'status',
      (c) => {
        c.trial('a', 1, 'X');
        c.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
      },
    ],
    [
      'NAMED_TWICE',
      'competitors',
      (c) => c.enter({ kind: 'order', round: 1, competitors: ['a', 'a'], reason: 'so' }),
    ],
    [
      'OPEN_QUESTIONS',
      null,
      (c) => {
        c.trial('a', 2, 'X');
        c.referee({ kind: 'sign-off', incomplete: 'dark' });
      },
    ],
    ['NOT_COMPLETE', 'incomplete', (c) => c.referee({ kind: 'sign-off', incomplete: null })],
    ['ALREADY_SO', null, (c) => c.referee({ kind: 'reopening', reason: 'so' })],
    ['ALREADY_SO', null, (c) => c.referee(correction(c.trial('a', 1, '50.00'), '50.00'))],
  ])('%s (%s)', (code, field, act, changes = {}) => {
    const circle = new Circle(discus(2, changes));
    act(circle);
    const before = circle.state.journal.length;
    expect(circle.verdict).toMatchObject({ standing: 'refused', refusal: { code, field } });
    if (circle.verdict?.standing !== 'refused') return;
    expect(circle.verdict.refusal.remedy).not.toBe('');
    expect(circle.state.journal).toHaveLength(before);
  });
});

describe('the official result', () => {
  it('is signed off when all is settled, and opened again with a reason', () => {
    const circle = new Circle(discus(1));
    circle.round(1, '50.00');
    for (let round = 2; round <= 6; round++) circle.round(round, '-');
    circle.referee({ kind: 'sign-off', incomplete: null });
    expect(progressOf(circle.state).phase).toBe('official');
    circle.referee({ kind: 'reopening', reason: 'clerical error' });
    expect(progressOf(circle.state).phase).toBe('complete');
  });
});

describe('a card', () => {
  it('comes back from the entries that an official would have made for it', () => {
    const circle = afterThreeRounds();
    circle.trial('h', 4, '53.10');
    circle.referee({ kind: 'disqualification', competitor: 'j', rule: 'TR7.1', reason: 'conduct' });
    const again = new Circle(discus(10));
    const key = (bib: string): string => String.fromCharCode(96 + Number(bib));
    for (const body of entriesOfCard(circle.state.card, key)) again.referee(body);
    expect(again.state.card).toEqual(circle.state.card);
  });
});
