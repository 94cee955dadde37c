import type { Series, Trial } from '../trial.js';
import { bestOf, hasValid, keysOf, markAt, separation, withMark } from './keys.js';
import { positionIn, rank } from './ranking.js';

/** Marks as numbers; `O` valid and not measured, `X` a failure, `null` not taken. */
function series(...trials: readonly (number | 'O' | 'X' | null)[]): Series {
  return trials.map((trial): Trial | null => {
    if (trial === null) return null;
    if (typeof trial === 'number') return { outcome: 'valid', mark: trial, wind: null };
    return { outcome: trial === 'O' ? 'unmeasured' : 'foul', mark: null, wind: null };
  });
}

const everybody = (field: readonly unknown[]): number[] => [...field.keys()];

describe('the key of a competitor', () => {
  const keys = keysOf([series(5, 'X', 7, null, 6), series('O', 'X'), series(7, 7, 7, 7, 9)], 4, 5);

  it('holds the marks of the rounds that count, best first, and nothing else', () => {
    expect(Array.from(keys.marks)).toEqual([7, 5, 0, 0, 0, 0, 0, 0, 0, 0, 7, 7, 7, 7, 0]);
    expect(Array.from(keys.unmeasured)).toEqual([0, 1, 0]);
    expect([bestOf(keys, 0), markAt(keys, 0, 2), markAt(keys, 0, 3)]).toEqual([7, 5, 0]);
  });

  it('says who has a valid trial, measured or not', () => {
    const some = keysOf([series('X'), series('O'), series(1), series()], 1);
    expect([0, 1, 2, 3].map((index) => hasValid(some, index))).toEqual([false, true, true, false]);
  });

  it('takes in one more mark and leaves the others as they were', () => {
    const more = withMark(keys, 0, 6);
    expect(Array.from(more.marks.slice(0, 5))).toEqual([7, 6, 5, 0, 0]);
    expect(more.marks.slice(5)).toEqual(keys.marks.slice(5));
    expect(bestOf(withMark(keys, 1, 3), 1)).toBe(3);
    expect(Array.from(keys.marks.slice(0, 3))).toEqual([7, 5, 0]);
  });

  it('finds the first best mark that separates two, for either of them', () => {
    expect(separation(keys, 2, 0)).toBe(2);
    expect(separation(keys, 0, 2)).toBe(-2);
    expect(separation(keys, 0, 0)).toBe(0);
    expect(separation(keys, 1, 0)).toBe(-1);
  });
});

describe('a ranking', () => {
  it('ranks some of the competitors by the trials up to a round', () => {
    const field = [series(5, 9), series(6), series(7), series('X', 8)];
    const { placed, unplaced } = rank(keysOf(field, 1), [0, 1, 3]);
    expect(placed).toEqual([
      { competitor: 1, place: 1, equal: false, decidedBy: 'first' },
      { competitor: 0, place: 2, equal: false, decidedBy: 1 },
    ]);
    expect(unplaced).toEqual([3]);
  });

  it('brings those level on the best mark into the order of competition once one of them was not measured', () => {
    const field = [series(6, 1), series(9), series(6, 5, 'O'), series(6, 6)];
    const { placed } = rank(keysOf(field, 3), everybody(field));
    expect(placed.map(({ competitor, place, decidedBy }) => [competitor, place, decidedBy])).toEqual([
      [1, 1, 'first'],
      [0, 2, 1],
      [2, 2, 'equal'],
      [3, 2, 'equal'],
    ]);
  });

  it('is empty for nobody', () => {
    expect(rank(keysOf([], 6), [])).toEqual({ placed: [], unplaced: [] });
  });

  it('finds the position of one without ranking the others', () => {
    const field = [
      series(6, 5),
      series(6, 5),
      series(6, 6),
      series('X'),
      series('O'),
      series(7, 'O'),
      series(7),
    ];
    const keys = keysOf(field, 2);
    const { placed } = rank(keys, everybody(field));
    for (const { competitor, place, equal } of placed) {
      expect(positionIn(keys, everybody(field), competitor)).toMatchObject({ place, equal });
    }
    expect(positionIn(keys, everybody(field), 3)).toBeNull();
    expect(positionIn(keys, everybody(field), 6)).toEqual({ place: 1, equal: true, undecidable: true });
    expect(positionIn(keys, everybody(field), 4)).toEqual({ place: 6, equal: false, undecidable: true });
  });

  it('finds the position of those level on the best mark without their next ones once one was not measured', () => {
    const field = [series(6, 1), series(9), series(6, 5, 'O'), series(6, 6)];
    const keys = keysOf(field, 3);
    for (const competitor of [0, 2, 3]) {
      const position = positionIn(keys, everybody(field), competitor);
      expect(position).toEqual({ place: 2, equal: true, undecidable: true });
    }
  });
});
