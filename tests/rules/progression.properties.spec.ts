import fc from 'fast-check';
import { countCard, type Card, type CardCompetitor, type ResultRow } from '#rules';
import { anyCard } from './support/any-card.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

const RUNS = { numRuns: PROPERTY_RUNS };

/** The card as it was after a round. */
function after(card: Card, round: number): Card {
  const competitors = card.competitors.map((one) => ({ ...one, series: one.series.slice(0, round) }));
  return { ...card, competitors };
}

/** Who is counted in a cut, of those who were through the one before. */
function countedIn(before: readonly CardCompetitor[], round: number): CardCompetitor[] {
  return before.filter(({ status, guest, series }) => {
    return status !== 'DNS' && !guest && !(status === 'DQ' && series.length <= round);
  });
}

/** The rows of those with a valid trial at that moment; among those counted everybody can be placed. */
function rankedAt(card: Card, counted: readonly CardCompetitor[], round: number): ResultRow[] {
  const competitors = counted.map((one): CardCompetitor => ({ ...one, status: null }));
  return countCard(after({ ...card, competitors }, round)).results.filter(({ place }) => place !== null);
}

describe('a cut', () => {
  it('takes through the best of those counted, all when they are few, and nobody level with the last stays', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        let before = card.competitors;
        const { cuts } = countCard(card);
        card.plan.cuts.forEach(({ after: round, through: size }, at) => {
          const counted = countedIn(before, round);
          const marked = rankedAt(card, counted, round);
          const { through } = cuts[at]!;
          const all = counted.length <= size;
          const ranked = marked.map(({ bib }) => bib);
          const without = counted.map(({ bib }) => bib).filter((bib) => !ranked.includes(bib));
          expect(through).toEqual([...ranked, ...(all ? without : [])].slice(0, through.length));
          expect(through.length).toBeGreaterThanOrEqual(all ? counted.length : Math.min(size, marked.length));
          const [last, next] = [marked[through.length - 1], marked[through.length]];
          expect(last && next ? last.place! < next.place! : true).toBe(true);
          before = before.filter(({ bib }) => through.includes(bib));
        });
      }),
      RUNS,
    );
  });

  it('is no wider than its size but for those level with the last, by the rule for ties', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        let before = card.competitors;
        const { cuts } = countCard(card);
        card.plan.cuts.forEach(({ after: round, through: size }, at) => {
          const ranked = rankedAt(card, countedIn(before, round), round);
          const { through } = cuts[at]!;
          const levelOn = card.plan.cutTies === 'mark' ? 'mark' : 'place';
          const beyond = ranked.slice(size, through.length).map((row) => row[levelOn]);
          expect(beyond.filter((value) => value !== ranked[size - 1]![levelOn])).toEqual([]);
          before = before.filter(({ bib }) => through.includes(bib));
        });
      }),
      RUNS,
    );
  });
});

describe('the order of a round', () => {
  it('calls everybody at most once, and from round to round only who was there before', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const orders = Object.values(countCard(card).order);
        expect(orders).toHaveLength(card.plan.rounds);
        const earlier = [card.competitors.map(({ bib }) => bib), ...orders];
        expect(orders.map((order) => new Set(order).size)).toEqual(orders.map((order) => order.length));
        const returned = orders.flatMap((order, at) => order.filter((bib) => !earlier[at]!.includes(bib)));
        expect(returned).toEqual([]);
      }),
      RUNS,
    );
  });

  it('has everybody who took a trial in it', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const { order } = countCard(card);
        const missed = card.competitors.filter(({ bib, series }) =>
          series.some((_, at) => !order[String(at + 1)]?.includes(bib)),
        );
        expect(missed).toEqual([]);
      }),
      RUNS,
    );
  });

  it('changes only after a round that makes a new one', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const { order } = countCard(card);
        const orders = Object.values(order);
        const before = [card.competitors.map(({ bib }) => bib), ...orders];
        const kept = orders.filter((_, at) => !card.plan.reorderAfter.includes(at));
        const expected = orders.flatMap((now, at) =>
          card.plan.reorderAfter.includes(at) ? [] : [before[at]!.filter((bib) => now.includes(bib))],
        );
        expect(kept).toEqual(expected);
      }),
      RUNS,
    );
  });

  it('made anew is the ranking, either way round, with level competitors in the order of competition', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const { order } = countCard(card);
        for (const round of card.plan.reorderAfter) {
          const now = order[String(round + 1)]!;
          const ranked = card.competitors.filter(({ bib, status, guest, series }) => {
            const ended = status === 'DNS' || (status === 'DQ' && series.length <= round);
            return !ended && (!guest || now.includes(bib));
          });
          const alike = ranked.map((one): CardCompetitor => ({ ...one, guest: false }));
          const places = new Map(rankedAt(card, alike, round).map(({ bib, place }) => [bib, place!]));
          const behind = card.plan.reorder === 'reverse' ? -1 : 1;
          const keyOf = (bib: string): number => (places.get(bib) ?? 1000) * behind;
          const original = card.competitors.map(({ bib }) => bib).filter((bib) => now.includes(bib));
          expect(now).toEqual(original.toSorted((a, b) => keyOf(a) - keyOf(b)));
        }
      }),
      RUNS,
    );
  });
});
