import fc from 'fast-check';
import { COMBINED_TIES, rankTotals, type CombinedTies } from './combined-ranking.js';

/** `A: 900 800` in words: points by event; the total is their sum. */
function ranked(ties: CombinedTies, ...lines: string[]): string[] {
  const rows = lines.map((line) => {
    const [bib = '', ...words] = line.split(' ');
    const byEvent = words.map(Number);
    return { bib, byEvent, points: byEvent.reduce((sum, one) => sum + one, 0) };
  });
  return rankTotals(rows, ties).map(
    ({ row, place, equal, decidedBy }) => `${place}${equal ? '=' : ''} ${row.bib} ${decidedBy}`,
  );
}

// The two steps as quoted from US rule books in a discussion (letsrun.com); the totals are constructed.
describe('equal totals', () => {
  const TWO = ['A 900 700 800', 'B 800 800 800'];

  it('share the place where ties stay', () => {
    expect(ranked('stay', ...TWO, 'C 700 800 800')).toEqual(['1= A first', '1= B equal', '3 C points']);
  });

  it('are parted by more events with more points, else by the best event', () => {
    expect(ranked('more events', 'A 900 700 700', 'B 800 750 750')).toEqual(['1 B first', '2 A more events']);
    // One event each, one level: 900 is the best single event.
    expect(ranked('more events', 'B 800 800 800', 'A 900 700 800')).toEqual(['1 A first', '2 B best events']);
    expect(ranked('more events', 'B 900 650 700 750', 'A 700 700 900 700')).toEqual([
      '1 B first',
      '2 A best events',
    ]);
  });

  it('stay where all of that is level', () => {
    expect(ranked('more events', 'A 900 700', 'B 700 900', 'C 700 700')).toEqual([
      '1= A first',
      '1= B equal',
      '3 C points',
    ]);
  });

  it('of three count an event for whoever beats both others, and the rest anew', () => {
    expect(ranked('more events', 'A 500 500 500', 'B 600 450 450', 'C 400 550 550')).toEqual([
      '1 C first',
      '2 A more events',
      '3 B more events',
    ]);
  });

  it('stay under World Athletics and are broken in US colleges', () => {
    expect([COMBINED_TIES.WA.value, COMBINED_TIES.NCAA.value]).toEqual(['stay', 'more events']);
  });
});

const field = fc.array(fc.array(fc.integer({ min: 6, max: 8 }), { minLength: 4, maxLength: 4 }), {
  minLength: 1,
  maxLength: 6,
});

describe('any ranking of totals', () => {
  const rowsOf = (all: readonly number[][]) =>
    all.map((byEvent) => ({ byEvent, points: byEvent.reduce((sum, one) => sum + one, 0) }));

  it('gives a place that is one more than those with a better total, where ties stay', () => {
    fc.assert(
      fc.property(field, (all) => {
        const rows = rowsOf(all);
        return rankTotals(rows, 'stay').every(
          ({ row, place }) => place === 1 + rows.filter((other) => other.points > row.points).length,
        );
      }),
      { numRuns: 20_000 },
    );
  });

  it('parts only level totals, shares only equal lists of points, and does not look at the order given', () => {
    fc.assert(
      fc.property(field, (all) => {
        const placings = rankTotals(rowsOf(all), 'more events');
        const reversed = rankTotals(rowsOf(all.toReversed()), 'more events');
        const places = (some: typeof placings): string =>
          some
            .map(({ row, place }) => `${place}:${row.byEvent.join()}`)
            .sort()
            .join(' ');
        return (
          places(placings) === places(reversed) &&
          placings.every(({ row, place, equal }, at) => {
            const before = placings[at - 1];
            const isSorted = before === undefined || before.row.points >= row.points;
            const sharing = placings.filter((other) => other.place === place);
            const lists = new Set(sharing.map((other) => other.row.byEvent.toSorted().join()));
            return isSorted && equal === sharing.length > 1 && lists.size === 1;
          })
        );
      }),
      { numRuns: 20_000 },
    );
  });
});
