import fc from 'fast-check';
import { countCard, type Card, type ResultRow, type Series, type Trial } from '#rules';
import { anyCard } from './support/any-card.js';
import { placesOn, withTrial } from './support/card.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

const RUNS = { numRuns: PROPERTY_RUNS };

/** A place to compare: whoever has none is behind everybody. */
function rankOf(places: ReadonlyMap<string, number | null>, bib: string): number {
  return places.get(bib) ?? Infinity;
}

/** A card and one of those who started on it. */
const cardAndOne = anyCard
  .filter(({ competitors }) => competitors.some(({ status }) => status !== 'DNS'))
  .chain((card) => {
    const started = card.competitors.filter(({ status }) => status !== 'DNS');
    return fc.tuple(fc.constant(card), fc.constantFrom(...started));
  });

const measured: fc.Arbitrary<Trial> = fc
  .integer({ min: 998, max: 1020 })
  .map((mark) => ({ outcome: 'valid', mark, wind: null }));
const unmarked = fc.constantFrom('foul', 'pass', 'retired').map((outcome): Trial => {
  return { outcome, mark: null, wind: null };
});

describe('the ranking of a throw or a horizontal jump', () => {
  it('does not depend on the order of competition', () => {
    const shuffled = anyCard.chain((card) => {
      const order = fc.shuffledSubarray([...card.competitors], { minLength: card.competitors.length });
      return fc.tuple(
        fc.constant(card),
        order.map((competitors) => ({ ...card, competitors })),
      );
    });
    fc.assert(
      fc.property(shuffled, ([card, other]) => {
        const [before, after] = [placesOn(card), placesOn(other)];
        expect([...before.keys()].map((bib) => after.get(bib))).toEqual([...before.values()]);
      }),
      RUNS,
    );
  });

  it('is a total preorder: places count who is better, and the decisions say where they change', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const rows = countCard(card).results;
        const placed = rows.filter(({ place }) => place !== null);
        expect(placed).toEqual(rows.slice(0, placed.length));
        const expected = placed.map((row, at) => {
          const shared = placed.filter(({ place }) => place === row.place).length > 1;
          const better = placed.filter(({ place }) => place! < row.place!).length;
          const isEqual = placed[at - 1]?.place === row.place;
          return { place: 1 + better, equal: shared, first: at === 0, shares: isEqual };
        });
        const actual = placed.map(({ place, equal, decidedBy }) => {
          return { place, equal, first: decidedBy === 'first', shares: decidedBy === 'equal' };
        });
        expect(actual).toEqual(expected);
      }),
      RUNS,
    );
  });

  it('gives every pair the order of their marks, unless one of those level with them was not measured', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const placed = countCard(card).results.filter(({ place }) => place !== null);
        const pairs = placed.flatMap((one) => placed.map((other) => [one, other] as const));
        expect(pairs.map(([one, other]) => Math.sign(one.place! - other.place!))).toEqual(
          pairs.map(([one, other]) => expectedOrder(card, placed, one.bib, other.bib)),
        );
      }),
      RUNS,
    );
  });

  it('changes no place for a failure, a pass or a retirement', () => {
    fc.assert(
      fc.property(cardAndOne, unmarked, (given, trial) => {
        const [card, { bib }] = given;
        expect(placesOn(withTrial(card, bib, trial))).toEqual(placesOn(card));
      }),
      RUNS,
    );
  });

  it('never worsens the place of whoever improves a mark or adds one', () => {
    fc.assert(
      fc.property(cardAndOne, measured, fc.nat(), (given, trial, pick) => {
        const [card, { bib }] = given;
        const before = rankOf(placesOn(card), bib);
        expect(rankOf(placesOn(withTrial(card, bib, trial)), bib)).toBeLessThanOrEqual(before);
        expect(rankOf(placesOn(withBetterMark(card, bib, pick)), bib)).toBeLessThanOrEqual(before);
      }),
      RUNS,
    );
  });

  // Unmeasured valid trials are the one exception: whoever has one makes ties out of next best marks.
  it('never improves a rival’s place by one more trial, but to share that of whoever has one not measured', () => {
    const unmeasured: Trial = { outcome: 'unmeasured', mark: null, wind: null };
    const anyTrial = fc.oneof(measured, unmarked, fc.constant(unmeasured));
    fc.assert(
      fc.property(cardAndOne, anyTrial, (given, trial) => {
        const [card, { bib, series }] = given;
        const [before, after] = [placesOn(card), placesOn(withTrial(card, bib, trial))];
        const improved = [...before.keys()].filter(
          (one) => one !== bib && rankOf(after, one) < rankOf(before, one),
        );
        const sharing = improved.filter((one) => rankOf(after, one) === rankOf(after, bib));
        const measuredAll = [...series, trial].every((one) => one?.outcome !== 'unmeasured');
        expect(improved).toEqual(measuredAll ? [] : sharing);
      }),
      RUNS,
    );
  });
});

function withBetterMark(card: Card, bib: string, pick: number): Card {
  const better = (series: Series): Series => {
    const marks = series.flatMap((trial, at) => (trial?.outcome === 'valid' ? [at] : []));
    const chosen = marks[pick % marks.length];
    return series.map((trial, at) =>
      trial && at === chosen ? { ...trial, mark: trial.mark! + 1 + (pick % 3) } : trial,
    );
  };
  return {
    ...card,
    competitors: card.competitors.map((one) =>
      one.bib === bib ? { ...one, series: better(one.series) } : one,
    ),
  };
}

/** The rule once more, in strings: marks of equal length compare as text, and a missing one comes first. */
function expectedOrder(card: Card, placed: readonly ResultRow[], a: string, b: string): number {
  const seriesOf = (bib: string): Series => card.competitors.find((one) => one.bib === bib)!.series;
  const marksOf = (bib: string): string[] => {
    const marks = seriesOf(bib).flatMap((trial) => (trial?.outcome === 'valid' ? [String(trial.mark)] : []));
    return marks.sort().reverse();
  };
  const best = (bib: string): string => marksOf(bib)[0] ?? '';
  if (best(a) !== best(b)) return best(a) > best(b) ? -1 : 1;
  const level = placed.filter(({ bib }) => best(bib) === best(a));
  if (level.some(({ bib }) => seriesOf(bib).some((trial) => trial?.outcome === 'unmeasured'))) return 0;
  const [all, allOther] = [marksOf(a).join(' '), marksOf(b).join(' ')];
  if (all === allOther) return 0;
  return all > allOther ? -1 : 1;
}
