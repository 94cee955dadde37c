import fc from 'fast-check';
import type { VerticalSeries } from './vertical-card.js';
import { parseVerticalCell } from './vertical-cell.js';
import { verticalStanding } from './vertical-standing.js';

const RUNS = { numRuns: 20_000 };
const CELLS = ['O', 'XO', 'XXO', 'X', 'XX', 'XXX', '-', 'X-', 'XX-', 'r', 'Xr', 'XXr', ''];
const anySeries = fc.array(fc.constantFrom(...CELLS), { maxLength: 9 });

function series(cells: readonly string[]): VerticalSeries {
  return cells.map(parseVerticalCell);
}

describe('what a series amounts to', () => {
  it.each([
    [['O', 'XO', 'XXX'], { best: 1, failuresAtBest: 1, failuresToBest: 1, ended: 'three failures' }],
    [
      ['XXO', 'XO', 'O', 'X-', 'XX'],
      { best: 2, failuresAtBest: 0, failuresToBest: 3, ended: 'three failures' },
    ],
    [['X-', 'O', 'XX'], { best: 1, failuresAtBest: 0, failuresToBest: 1, ended: null }],
    [['O', '-', 'r'], { best: 0, failuresAtBest: 0, failuresToBest: 0, ended: 'retired' }],
    [['-', 'XX-', 'X'], { best: null, failuresAtBest: 0, failuresToBest: 0, ended: 'three failures' }],
    [[], { best: null, failuresAtBest: 0, failuresToBest: 0, ended: null }],
  ])('%j', (cells, expected) => {
    expect(verticalStanding(series(cells))).toMatchObject(expected);
  });

  // WA TR26.2: a pass does not break a run of failures, a clearance does.
  it('counts consecutive failures across heights', () => {
    expect(verticalStanding(series(['X-', '-', 'X-'])).consecutiveFailures).toBe(2);
    expect(verticalStanding(series(['XX-', 'O', 'X'])).consecutiveFailures).toBe(1);
  });

  it('never counts a pass as a failure', () => {
    fc.assert(
      fc.property(anySeries, (cells) => {
        const withoutPasses = cells.map((cell) => cell.replace('-', ''));
        const trials = withoutPasses.map((cell) => parseVerticalCell(cell) ?? []);
        expect(verticalStanding(series(cells))).toEqual(verticalStanding(trials));
      }),
      RUNS,
    );
  });

  it('never looks at failures above the greatest height cleared', () => {
    const failures = fc.array(fc.constantFrom('X', 'XX', 'XXX', '-', 'X-', 'XX-', 'XXr', ''), {
      maxLength: 5,
    });
    fc.assert(
      fc.property(anySeries, failures, failures, (cells, above, otherAbove) => {
        const [one, other] = [above, otherAbove].map((end) =>
          verticalStanding(series([...cells, 'O', ...end])),
        );
        expect(one?.best).toBe(cells.length);
        const countback = ({ best, failuresAtBest, failuresToBest }: NonNullable<typeof one>) => [
          best,
          failuresAtBest,
          failuresToBest,
        ];
        expect(one && countback(one)).toEqual(other && countback(other));
      }),
      RUNS,
    );
  });

  it('counts as the letters on the card do', () => {
    fc.assert(
      fc.property(anySeries, (cells) => {
        const best = cells.findLastIndex((cell) => cell.includes('O'));
        const crosses = (some: readonly string[]) => some.join('').split('X').length - 1;
        expect(verticalStanding(series(cells))).toMatchObject({
          best: best < 0 ? null : best,
          failuresAtBest: best < 0 ? 0 : crosses([cells[best] ?? '']),
          failuresToBest: best < 0 ? 0 : crosses(cells.slice(0, best + 1)),
          consecutiveFailures: crosses(cells.slice(best + 1)),
        });
      }),
      RUNS,
    );
  });
});
