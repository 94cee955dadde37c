import { countCard, cutsOf, orderOf, reasonsOf, sentenceOf, type Card } from '#rules';
import { card, resultOf } from './support/card.js';

const throughOf = (counted: Card): readonly string[] => cutsOf(counted)[0]!.through;

// Constructed after World Athletics TR25.22, whose principle is in public texts of older editions: ties by the second
// best mark, then the third, and so on; that a missing mark loses is from memory.
describe('ties in throws and horizontal jumps', () => {
  it('are broken by the second best mark', () => {
    const discus = card({
      A: '61.20 X 60.05 59.90 X 58.00',
      B: 'X 61.20 60.40 X - 57.10',
      C: '60.90 60.80 60.70 X X X',
    });
    expect(resultOf(discus)).toEqual(['1 B 61.20 first', '2 A 61.20 2nd best', '3 C 60.90 best']);
    expect(reasonsOf(discus).map(sentenceOf)).toEqual([
      '1st: best 61.20',
      '2nd: equal best 61.20; second best 60.05 against 60.40',
      '3rd: best 60.90 against 61.20',
    ]);
  });

  it('are broken by the third best when the second is level', () => {
    const shot = card({ A: '18.10 17.90 X 17.55 X X', B: '17.90 18.10 17.60 X X 17.01' }, { event: 'shot' });
    expect(resultOf(shot)).toEqual(['1 B 18.10 first', '2 A 18.10 3rd best']);
    expect(sentenceOf(reasonsOf(shot)[1]!)).toBe(
      '2nd: equal best 18.10 and second best 17.90; third best 17.55 against 17.60',
    );
  });

  it('go against whoever has no further mark', () => {
    const hammer = card({ A: 'X X 70.00 X X X', B: '70.00 X 65.12 X X X' }, { event: 'hammer' });
    expect(resultOf(hammer)).toEqual(['1 B 70.00 first', '2 A 70.00 2nd best']);
    expect(sentenceOf(reasonsOf(hammer)[1]!)).toBe(
      '2nd: equal best 70.00; no further valid mark against 65.12',
    );
  });

  // From memory: no extra trial for first place in current texts, as there was in older ones.
  it('stay when every mark is level, also for first place', () => {
    const jump = card({ A: '7.00 6.90 X', B: '6.90 7.00 X', C: '6.99 6.98 6.97' }, { event: 'long-jump' });
    expect(resultOf(jump)).toEqual(['1= A 7.00 first', '1= B 7.00 equal', '3 C 6.99 best']);
    expect(sentenceOf(reasonsOf(jump)[1]!)).toBe(
      '1st, shared: equal best 7.00 and second best 6.90; no further valid mark on either side',
    );
  });

  it('do not depend on when a mark was made, and a pass is no failure', () => {
    const jump = card({ A: '- - 14.50 - - 14.20', B: '14.20 14.50 X X X X' }, { event: 'triple-jump' });
    expect(resultOf(jump)).toEqual(['1= A 14.50 first', '1= B 14.50 equal']);
  });

  // World Athletics TR29 and CR31, from memory: wind decides about records, not about places.
  it('and places take no notice of the wind', () => {
    const jump = card(
      { A: '7.60/+3.1 7.40/+0.5 X', B: '7.55/+1.0 7.50/+0.2 7.45/+1.9' },
      { event: 'long-jump' },
    );
    expect(countCard(jump).results).toMatchObject([
      { bib: 'A', place: 1, mark: '7.60', wind: '+3.1', windLegal: false, windLegalMark: '7.40' },
      { bib: 'B', place: 2, mark: '7.55', wind: '+1.0', windLegal: true, windLegalMark: '7.55' },
    ]);
  });
});

// Codes: World Athletics CR25.4 in a public list of its abbreviations. That who retires keeps the place is from memory.
describe('who has no place', () => {
  const javelin = card(
    {
      A: '55.01 X r',
      B: 'X X X',
      C: ['', { status: 'DNS' }],
      D: ['60.00 61.00', { status: 'DQ' }],
      E: '54.99 - 55.00',
      F: ['56.00', { guest: true }],
      G: ['O', { guest: true }],
      H: ['X', { guest: true }],
    },
    { event: 'javelin' },
  );

  it('comes after all who have one, even one who retired', () => {
    expect(resultOf(javelin)).toEqual([
      '1 A 55.01 first',
      '2 E 55.00 best',
      'NM B –',
      'DQ D –',
      'DNS C –',
      'GUEST F 56.00',
      'GUEST G O',
      'GUEST H –',
    ]);
  });

  it('is told why', () => {
    expect(reasonsOf(javelin).slice(2).map(sentenceOf)).toEqual([
      'No place: no valid mark',
      'No place: disqualified',
      'No place: did not start',
      'No place: guest, best 56.00',
      'No place: guest, not measured',
      'No place: guest',
    ]);
  });
});

const NINE = {
  a1: '60.00 59.00 X',
  a2: '58.50 X X',
  a3: '57.00 56.00 55.00',
  a4: 'X 56.50 X',
  a5: '55.80 55.00 X',
  a6: '55.10 54.00 53.00',
  a7: '54.90 X X',
  a8: '54.00 53.50 X',
  a10: '50.00 X X',
};

describe('the cut after three rounds', () => {
  // World Athletics TR25.6, in a public text of an older edition: ties for the last place by the next best marks.
  it('breaks a tie for the last place by the next best marks', () => {
    const discus = card({ ...NINE, a9: 'X 54.00 53.10' });
    expect(throughOf(discus)).toEqual(['a1', 'a2', 'a3', 'a4', 'a5', 'a6', 'a7', 'a8']);
  });

  // World Athletics TR25.6, from memory.
  it('takes both through when every mark is level', () => {
    const discus = card({ ...NINE, a9: 'X 54.00 53.50' });
    expect(throughOf(discus)).toEqual(['a1', 'a2', 'a3', 'a4', 'a5', 'a6', 'a7', 'a8', 'a9']);
  });

  // NFHS 6-2-17 and NCAA 6-2-5, quoted by a state officials' association: all tied for the last place are finalists.
  it.each(['NFHS', 'NCAA'] as const)('takes all level on the best mark through under %s', (rules) => {
    const discus = card(
      { ...NINE, a9: 'X 54.00 53.10' },
      { rules, plan: { cuts: [{ after: 3, through: 8 }] } },
    );
    expect(throughOf(discus)).toEqual(['a1', 'a2', 'a3', 'a4', 'a5', 'a6', 'a7', 'a8', 'a9']);
  });

  // NFHS 6-2, as officials' guides put it: a finalist needs one valid trial.
  it('takes nobody through without a valid mark when there are more than go on', () => {
    const marks = [14.5, 14, 13.5, 13, 12.5, 12, 11.5].map((mark, at) => [
      `b${at + 1}`,
      `${mark.toFixed(2)} X X`,
    ]);
    const none = ['b8', 'b9', 'b10', 'b11'].map((bib) => [bib, 'X X X']);
    const shot = card(Object.fromEntries([...marks, ...none]), { rules: 'NFHS', event: 'shot' });
    expect(throughOf(shot)).toEqual(['b1', 'b2', 'b3', 'b4', 'b5', 'b6', 'b7']);
  });
});

// World Athletics TR25.6, in a public text of an older edition: reverse order of the ranking after round 3.
describe('the order after three rounds', () => {
  const field = {
    d3: 'X 48.00 47.00',
    d1: '50.00 51.00 X',
    d8: '54.00 X X',
    d5: '48.00 47.00 X',
    d2: '55.00 54.00 53.00',
    d7: '49.00 X X',
    d4: '52.00 X X',
    d6: '53.00 X 50.00',
  };

  // That level competitors keep the drawn order is from memory.
  it('is the ranking from the last to the first, level competitors as drawn', () => {
    expect(orderOf(card(field))['4']).toEqual(['d3', 'd5', 'd7', 'd1', 'd4', 'd6', 'd8', 'd2']);
  });

  // From a public draft of a rule change for fields of eight or fewer.
  it('begins with those who have no valid mark, as drawn', () => {
    const discus = card({ ...field, d1: 'X X X', d5: 'X X X' });
    expect(orderOf(discus)['4']).toEqual(['d1', 'd5', 'd3', 'd7', 'd4', 'd6', 'd8', 'd2']);
  });

  // A regulation of championships, from memory.
  it('can be made again before the last round', () => {
    const discus = card(
      {
        d3: 'X 48.00 47.00 X X',
        d1: '50.00 51.00 X X 56.00',
        d8: '54.00 X X X X',
        d5: '48.00 47.00 X X 49.50',
        d2: '55.00 54.00 53.00 X X',
        d7: '49.00 X X X X',
        d4: '52.00 X X 52.50 X',
        d6: '53.00 X 50.00 X 55.00',
      },
      { plan: { reorderAfter: [3, 5] } },
    );
    expect(orderOf(discus)['6']).toEqual(['d3', 'd7', 'd5', 'd4', 'd8', 'd6', 'd2', 'd1']);
  });

  // One-day meetings call the leaders first, as the sports press reported for 2022.
  it('can call the leaders first', () => {
    const discus = card(field, { plan: { reorder: 'leaders-first' } });
    expect(orderOf(discus)['4']).toEqual(['d2', 'd8', 'd6', 'd4', 'd1', 'd7', 'd3', 'd5']);
  });
});

// The reduction of the 2025 World Championships as the press reported it: 12 take three trials, 10 a fourth, 8 a fifth
// and 6 a sixth, 60 trials in all.
it('a reduction from round to round comes to 60 trials', () => {
  const field = Array.from({ length: 12 }, (_, at) => [`e${at + 1}`, `${50 + at}.00 X X`]);
  const cuts = [
    { after: 3, through: 10 },
    { after: 4, through: 8 },
    { after: 5, through: 6 },
  ];
  const discus = card(Object.fromEntries(field), { plan: { cuts, reorderAfter: [3, 4, 5] } });
  const calls = Object.values(orderOf(discus)).map((order) => order.length);
  expect(calls).toEqual([12, 12, 12, 10, 8, 6]);
  expect(calls.reduce((sum, called) => sum + called)).toBe(60);
});
