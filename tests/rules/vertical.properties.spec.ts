import fc from 'fast-check';
import { countVertical, type ResultRow, type VerticalCard } from '#rules';
import { highJump } from './support/vertical-card.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

const RUNS = { numRuns: PROPERTY_RUNS };
const HEIGHTS = ['1.50', '1.55', '1.60', '1.65'];

/** Three trials at most, ending as a card may show it; whole series need not be possible, only countable. */
const cell = fc.constantFrom('O', 'XO', 'XXO', '-', 'X-', 'XX-', 'XXX', '.');
const series = fc.array(cell, { maxLength: HEIGHTS.length }).map((cells) => cells.join(' '));
const field = fc.array(series, { minLength: 1, maxLength: 6 });

function final(all: readonly string[]): VerticalCard {
  return highJump(HEIGHTS.join(' '), Object.fromEntries(all.map((cells, index) => [`B${index}`, cells])));
}

function placesOf(card: VerticalCard): Map<string, number | null> {
  return new Map(countVertical(card).results.map(({ bib, place }) => [bib, place]));
}

/** As a scorer counts on the card, by its letters; the greatest is the best. */
function countback(cells: string): number[] | null {
  const all = cells.split(' ');
  const best = all.findLastIndex((one) => one.endsWith('O'));
  if (best < 0) return null;
  const crosses = (some: readonly string[]) => some.join('').replaceAll(/[^X]/g, '').length;
  return [best, -crosses(all.slice(best, best + 1)), -crosses(all.slice(0, best + 1))];
}

function isBetter(a: readonly number[], b: readonly number[]): boolean {
  const index = a.findIndex((value, at) => value !== b[at]);
  return index >= 0 && (a[index] ?? 0) > (b[index] ?? 0);
}

describe('the places of a vertical jump', () => {
  it('are one more than the number of those who are better, counted by hand', () => {
    fc.assert(
      fc.property(field, (all) => {
        const keys = all.map(countback);
        const expected = keys.map(
          (key) => key && 1 + keys.filter((other) => other && isBetter(other, key)).length,
        );
        const places = placesOf(final(all));
        expect(all.map((_, index) => places.get(`B${index}`))).toEqual(expected);
      }),
      RUNS,
    );
  });

  it('do not depend on the order of competition', () => {
    fc.assert(
      fc.property(field, (all) => {
        const card = final(all);
        const turned = { ...card, competitors: [...card.competitors].reverse() };
        expect(placesOf(turned)).toEqual(placesOf(card));
      }),
      RUNS,
    );
  });

  it('and what decides them do not change when failures above the greatest height are struck', () => {
    fc.assert(
      fc.property(field, (all) => {
        const struck = all.map((cells) => {
          const one = cells.split(' ');
          return one.slice(0, one.findLastIndex((each) => each.endsWith('O')) + 1).join(' ');
        });
        expect(countVertical(final(struck))).toEqual(countVertical(final(all)));
      }),
      RUNS,
    );
  });

  it('say of each what the one before does better', () => {
    fc.assert(
      fc.property(field, (all) => {
        const placed = countVertical(final(all)).results.filter((row) => row.place !== null);
        for (const [index, row] of placed.entries()) {
          expect(row.decidedBy).toBe(saidOf(placed[index - 1], row, all));
        }
      }),
      RUNS,
    );
  });
});

function saidOf(before: ResultRow | undefined, row: ResultRow, all: readonly string[]): string {
  if (!before) return 'first';
  const [a, b] = [before, row].map(({ bib }) => countback(all[Number(bib.slice(1))] ?? '') ?? []);
  const first = a?.findIndex((value, at) => value !== b?.[at]) ?? -1;
  return ['height', 'failures at height', 'total failures'][first] ?? 'equal';
}
