import type { Card, CardCompetitor } from '../card.js';
import type { Plan } from '../plan.js';
import type { Series, Trial } from '../trial.js';
import { cutFieldsOf, cutsOf, isMade, type CutField } from './cuts.js';
import { orderOf } from './order.js';
import { lastRound, reachedIn, retiredIn } from './series.js';

/** `60 X O . r`: a mark, a failure, valid and not measured, not taken, retired. */
function series(cells: string): Series {
  return cells
    .split(' ')
    .filter(Boolean)
    .map((cell): Trial | null => {
      if (cell === '.') return null;
      const outcome = ({ X: 'foul', O: 'unmeasured', r: 'retired' } as const)[cell] ?? 'valid';
      return { outcome, mark: outcome === 'valid' ? Number(cell) : null, wind: null };
    });
}

type Given = string | readonly [string, Partial<CardCompetitor>];

/** By bib, in the order of competition. */
function card(
  competitors: Readonly<Record<string, Given>>,
  plan: Partial<Plan>,
  parts: Partial<Card> = {},
): Card {
  const blank = { name: null, club: null, flight: null, status: null, guest: false };
  return {
    rules: 'WA',
    edition: '2025',
    event: 'shot',
    indoor: false,
    stage: 'final',
    qualifying: null,
    plan: { rounds: 6, cuts: [], cutTies: 'next-best', reorderAfter: [], reorder: 'reverse', ...plan },
    unit: 'cm',
    competitors: Object.entries(competitors).map(([bib, given]) => {
      const [cells, more] = typeof given === 'string' ? [given, {}] : given;
      return { ...blank, bib, series: series(cells), ...more };
    }),
    admitted: [],
    ...parts,
  };
}

const OUT = { status: 'DQ' } as const;

describe('what a series says', () => {
  it('has its last round where the last trial is, whatever rounds are left open', () => {
    expect(['', '.', '50', '50 .', '. 50 . .'].map((cells) => lastRound(series(cells)))).toEqual([
      0, 0, 1, 1, 2,
    ]);
  });

  it('ends where the competitor retires', () => {
    expect(['50 X', '. r', 'r'].map((cells) => retiredIn(series(cells)))).toEqual([Infinity, 2, 1]);
  });

  it('reaches a standard with the first mark at or over it', () => {
    expect(['. X 60 61', '59 61', '59 O'].map((cells) => reachedIn(series(cells), 60))).toEqual([
      3,
      2,
      Infinity,
    ]);
  });
});

describe('the cuts', () => {
  const twice = [
    { after: 3, through: 2 },
    { after: 4, through: 2 },
  ];

  it('are made later on among those who are through the one before', () => {
    const given = card({ A: '60 X X 61', B: ['50 X X X', OUT], C: '40 X X' }, { cuts: twice });
    expect(cutsOf(given)).toEqual([
      { after: 3, through: ['A', 'B'] },
      { after: 4, through: ['A'] },
    ]);
  });

  it('take in who was admitted after them, once, and nobody else', () => {
    const admitted = [
      { bib: 'A', after: 3, by: 'R' as const },
      { bib: 'C', after: 3, by: 'R' as const },
      { bib: 'nobody', after: 3, by: 'R' as const },
      { bib: 'B', after: 4, by: 'R' as const },
      { bib: 'B', after: null, by: 'R' as const },
    ];
    const given = card({ A: '40', B: '50', C: '60', D: '70' }, { cuts: twice }, { admitted });
    expect(cutsOf(given)).toEqual([
      { after: 3, through: ['D', 'C', 'A'] },
      { after: 4, through: ['D', 'C', 'B'] },
    ]);
  });

  it('do not bring back into the field, by a later one, who went out at an earlier one', () => {
    const cuts = [2, 3, 4].map((after) => ({ after, through: 1 }));
    const admitted = [{ bib: 'B', after: 3, by: 'R' as const }];
    const fields = cutFieldsOf(card({ A: '60', B: '50' }, { cuts }, { admitted }));
    expect(fields.map(({ counted, through }) => [counted, through])).toEqual([
      [[0, 1], [0]],
      [[0], [0, 1]],
      [[0], [0]],
    ]);
  });
});

describe('a cut is made', () => {
  const cut = { after: 3, through: 2 };
  const made = (one: Given, parts: Partial<Card> = {}): boolean => {
    const field: CutField = { cut, counted: [0, 1], through: [] };
    return isMade(card({ A: one, B: '50 50 50' }, { cuts: [cut] }, parts), field);
  };

  it('once everybody counted has had the trials before it', () => {
    expect([made('60 60'), made('60 60 .'), made('60 60 X'), made('60 60 X 61')]).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });

  it('without the trials that nobody will take any more', () => {
    expect([made('60 r'), made(['60', OUT])]).toEqual([true, true]);
  });

  it('without those of whoever has reached the standard', () => {
    const qualifying = { standard: 60, fill: 2 };
    expect([made('60', { qualifying }), made('59', { qualifying })]).toEqual([true, false]);
  });
});

/*
 * Level on the best mark B is before C by the next one, so that C goes first; whoever is level with them and has a
 * trial that was not measured leaves them in the order of competition, but only if ranked with them.
 */
describe('a new order', () => {
  const fourthRound = (first: Given): string[] | undefined =>
    orderOf(card({ A: first, B: '60 55 X', C: '60 50 X' }, { reorderAfter: [3] }))['4'];

  it('is that of the whole competition, with those who retired', () => {
    expect(fourthRound('X X r')).toEqual(['C', 'B']);
    expect(fourthRound('60 O r')).toEqual(['B', 'C']);
    expect(fourthRound('60 O X')).toEqual(['A', 'B', 'C']);
  });

  it('takes no account of who was disqualified', () => {
    expect(fourthRound(['60 O X', OUT])).toEqual(['C', 'B']);
  });

  it('takes account of a guest who still competes, and of no other', () => {
    expect(fourthRound(['60 O X', { guest: true }])).toEqual(['A', 'B', 'C']);
    expect(fourthRound(['60 O r', { guest: true }])).toEqual(['C', 'B']);
  });
});
