import { countCard, cutsOf, orderOf, reasonsOf, sentenceOf } from '#rules';
import { card, resultOf } from './support/card.js';

describe('a valid trial that was not measured', () => {
  it('makes all who are level on the best mark share the place', () => {
    const discus = card({ A: '50.00 40.00', B: '50.00 45.00 O', C: '50.00 49.00', D: '51.00', E: '49.99' });
    expect(resultOf(discus)).toEqual([
      '1 D 51.00 first',
      '2= A 50.00 best',
      '2= B 50.00 equal',
      '2= C 50.00 equal',
      '5 E 49.99 best',
    ]);
    expect(sentenceOf(reasonsOf(discus)[2]!)).toBe(
      '2nd, shared: equal best 50.00; a valid trial was not measured, so the next best marks cannot decide',
    );
  });

  it('alone ranks after every mark, all level', () => {
    const discus = card({ A: 'O', B: 'X', C: '10.00', D: 'X O O' });
    expect(resultOf(discus)).toEqual(['1 C 10.00 first', '2= A O best', '2= D O equal', 'NM B –']);
    expect(reasonsOf(discus).map(sentenceOf)).toEqual([
      '1st: best 10.00',
      '2nd, shared: valid but not measured, after every measured mark',
      '2nd, shared: valid but not measured',
      'No place: no valid mark',
    ]);
    expect(countCard(discus).results[1]).toMatchObject({ wind: null, windLegal: null, windLegalMark: null });
  });

  it('can lead', () => {
    const discus = card({ A: 'X', B: 'O' });
    expect(resultOf(discus)).toEqual(['1 B O first', 'NM A –']);
    expect(sentenceOf(reasonsOf(discus)[0]!)).toBe('1st: valid but not measured');
  });

  it('takes all who are level on the best mark through a cut together', () => {
    const plan = { cuts: [{ after: 2, through: 2 }], rounds: 4 };
    const discus = card(
      { A: '50.00 40.00', B: '50.00 O', C: '51.00 X', D: '50.00 49.00', E: 'X X' },
      { plan },
    );
    expect(cutsOf(discus)[0]!.through).toEqual(['C', 'A', 'B', 'D']);
    const none = card({ A: 'O X', B: 'X O', C: '51.00 X', D: 'X X' }, { plan: { ...plan, cutTies: 'mark' } });
    expect(cutsOf(none)[0]!.through).toEqual(['C', 'A', 'B']);
  });

  it('counts only from the round in which it was taken', () => {
    const plan = { cuts: [{ after: 1, through: 1 }], rounds: 3, reorderAfter: [1] };
    const discus = card({ A: '50.00', B: '51.00 O', C: '51.00' }, { plan: { ...plan, cuts: [] } });
    expect(orderOf(discus)['2']).toEqual(['A', 'B', 'C']);
  });
});

describe('reasons', () => {
  const [first, second] = reasonsOf(card({ A: '58.10 57.44 50.00', B: '58.10 57.44 49.00 X' }));

  it('hold the marks that are level, those that are not, and the rule of the rule set', () => {
    expect(first).toMatchObject({
      bib: 'A',
      place: 1,
      comparedWith: null,
      level: [],
      own: '58.10',
      other: null,
    });
    expect(second).toMatchObject({
      bib: 'B',
      decidedBy: 3,
      comparedWith: 'A',
      level: ['58.10', '57.44'],
      own: '49.00',
      other: '50.00',
      rule: { rule: expect.stringContaining('TR25.22') },
    });
  });

  it('name the rule of another rule set', () => {
    const [nfhs] = reasonsOf(card({ A: '58.10' }, { rules: 'NFHS' }));
    expect(nfhs).toMatchObject({ rule: { rule: expect.stringContaining('NFHS') } });
  });

  it('hold what separates a shared place from the one before, and nothing within it', () => {
    const [, b, c] = reasonsOf(card({ A: '58.10', B: '57.00 50.00', C: '50.00 57.00' }));
    expect(b).toMatchObject({ shared: true, decidedBy: 1, own: '57.00', other: '58.10' });
    expect(c).toMatchObject({
      shared: true,
      comparedWith: 'B',
      level: ['57.00', '50.00'],
      own: null,
      other: null,
      undecidable: false,
    });
    expect(sentenceOf(b!)).toBe('2nd, shared: best 57.00 against 58.10');
  });

  it('name up to twelve marks', () => {
    const marks = Array.from({ length: 11 }, (_, at) => `${60 - at}.00`);
    const plan = { rounds: 12, cuts: [] };
    const reasons = reasonsOf(
      card({ A: [...marks, '40.00'].join(' '), B: [...marks, '39.00'].join(' ') }, { plan }),
    );
    expect(sentenceOf(reasons[1]!)).toMatch(/ and eleventh best 50\.00; twelfth best 39\.00 against 40\.00$/);
  });
});

describe('a cut', () => {
  const plan = { rounds: 6, cuts: [{ after: 3, through: 2 }] };

  it('takes everybody through when they are no more than go on, whoever has no mark last', () => {
    const discus = card(
      { A: 'X X X', B: '50.00 X X', C: 'X', D: '51.00 X X' },
      { plan: { cuts: [{ after: 3, through: 4 }] } },
    );
    expect(cutsOf(discus)).toEqual([{ after: 3, through: ['D', 'B', 'A', 'C'] }]);
  });

  it('does not count who did not start, guests and whom a disqualification stopped by then', () => {
    const discus = card(
      {
        A: ['', { status: 'DNS' }],
        B: ['60.00 X X', { guest: true }],
        C: ['59.00 X X . .', { status: 'DQ' }],
        D: ['58.00 X X X', { status: 'DQ' }],
        E: '57.00 r',
        F: '56.00 X X',
      },
      { plan },
    );
    expect(cutsOf(discus)[0]!.through).toEqual(['D', 'E']);
    expect(orderOf(discus)).toEqual({
      1: ['B', 'C', 'D', 'E', 'F'],
      2: ['B', 'C', 'D', 'E', 'F'],
      3: ['B', 'C', 'D', 'F'],
      4: ['D'],
      5: [],
      6: [],
    });
  });

  it('is made among those who are through the one before', () => {
    const ladder = {
      rounds: 4,
      cuts: [
        { after: 1, through: 2 },
        { after: 2, through: 2 },
      ],
      reorderAfter: [],
    };
    const discus = card({ A: '50.00 X', B: '49.00', C: '51.00 X' }, { plan: ladder });
    expect(cutsOf(discus).map(({ through }) => through)).toEqual([
      ['C', 'A'],
      ['C', 'A'],
    ]);
  });

  it('is let through by the referee, the jury or a draw, after all others and once', () => {
    const admitted = [
      { bib: 'C', after: 3, by: 'J' },
      { bib: 'A', after: 3, by: 'R' },
      { bib: 'D', after: 3, by: 'D' },
      { bib: 'C', after: 3, by: 'R' },
      { bib: 'Z', after: 3, by: 'R' },
    ] as const;
    const discus = card(
      { A: '60.00 X X', B: '59.00 X X', C: 'X X X', D: ['50.00 X X', { guest: true }] },
      { plan, admitted },
    );
    expect(cutsOf(discus)[0]!.through).toEqual(['A', 'B', 'C', 'D']);
    expect(orderOf(discus)['4']).toEqual(['C', 'D', 'B', 'A']);
    const qualified = countCard(discus).results.map(({ bib, qualified: as }) => `${bib} ${as}`);
    expect(qualified).toEqual(['A qR', 'B null', 'C qJ', 'D qD']);
  });

  it('that nobody comes to takes nobody through', () => {
    expect(countCard(card({}))).toEqual({
      results: [],
      cuts: [{ after: 3, through: [] }],
      order: { 1: [], 2: [], 3: [], 4: [], 5: [], 6: [] },
    });
  });
});

describe('a new order', () => {
  it('ranks a guest with the others while the guest competes', () => {
    const plan = { rounds: 3, cuts: [{ after: 2, through: 2 }], reorderAfter: [1, 2] };
    const discus = card({ A: '50.00 X', B: ['49.00 X', { guest: true }], C: '48.00 X' }, { plan });
    expect(orderOf(discus)).toEqual({ 1: ['A', 'B', 'C'], 2: ['C', 'B', 'A'], 3: ['C', 'A'] });
  });

  it('leaves those who are level as they were drawn, not as they were called last', () => {
    const plan = { rounds: 4, cuts: [], reorderAfter: [1, 2] };
    const discus = card({ A: '50.00 X', B: '49.00 50.00', C: 'X X', D: '50.00 49.00' }, { plan });
    expect(orderOf(discus)).toMatchObject({ 2: ['C', 'B', 'A', 'D'], 3: ['C', 'A', 'B', 'D'] });
  });
});

describe('a qualification', () => {
  const field = { A: '58.00', B: 'X 57.00 X', C: 'X X 59.00', D: '57.00 X X', E: 'X X X', F: '50.00 X X' };
  const qualification = (fill: number, parts: Parameters<typeof card>[1] = {}) =>
    card(field, { stage: 'qualification', qualifying: { standard: 5800, fill }, ...parts });
  const qualified = (counted: ReturnType<typeof card>): string[] =>
    countCard(counted).results.map(({ bib, qualified: as }) => `${bib} ${as}`);

  it('takes on who reached the standard, and the best of the others with who is level with the last', () => {
    expect(qualified(qualification(0))).toEqual(['C Q', 'A Q', 'B null', 'D null', 'F null', 'E null']);
    expect(qualified(qualification(1))).toEqual(['C Q', 'A Q', 'B null', 'D null', 'F null', 'E null']);
    expect(qualified(qualification(3))).toEqual(['C Q', 'A Q', 'B q', 'D q', 'F null', 'E null']);
    expect(qualified(qualification(12))).toEqual(['C Q', 'A Q', 'B q', 'D q', 'F q', 'E null']);
  });

  it('calls nobody after the standard', () => {
    expect(orderOf(qualification(12))).toMatchObject({
      1: ['A', 'B', 'C', 'D', 'E', 'F'],
      2: ['B', 'C', 'D', 'E', 'F'],
    });
  });

  it('lets the referee admit whom the marks do not take on', () => {
    const admitted = [
      { bib: 'E', after: null, by: 'R' },
      { bib: 'A', after: null, by: 'J' },
    ] as const;
    expect(qualified(qualification(0, { admitted }))).toEqual([
      'C Q',
      'A Q',
      'B null',
      'D null',
      'F null',
      'E qR',
    ]);
  });
});

describe('the mark that is shown', () => {
  const jump = (cells: string, indoor = false) =>
    countCard(card({ A: cells }, { event: 'long-jump', indoor })).results[0];

  it('is, among equal ones, the first that is wind-legal, else the first', () => {
    expect(jump('7.40/+2.1 7.40 7.40/+2.0 7.40/+0.3')).toMatchObject({ wind: '+2.0', windLegal: true });
    expect(jump('7.40 7.40/+2.1')).toMatchObject({ wind: null, windLegal: null, windLegalMark: null });
    expect(jump('7.40/NWI 7.30/-0.4')).toMatchObject({ wind: 'NWI', windLegal: null, windLegalMark: '7.30' });
    expect(jump('7.40/+2.1 7.39/+0.0')).toMatchObject({
      wind: '+2.1',
      windLegal: false,
      windLegalMark: '7.39',
    });
  });

  it('has no wind indoors, nor while the reading is still expected', () => {
    expect(jump('7.40 7.30', true)).toMatchObject({ wind: null, windLegal: null, windLegalMark: '7.40' });
    expect(jump('7.40/pending')).toMatchObject({ wind: null, windLegal: null, windLegalMark: null });
  });

  it('is written in the unit of the card', () => {
    expect(countCard(card({ A: '147-06.25' }, { unit: 'qin' })).results[0]!.mark).toBe('147-06.25');
  });
});
