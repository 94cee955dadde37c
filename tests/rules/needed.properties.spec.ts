import fc from 'fast-check';
import {
  countCard,
  cutsOf,
  neededForAll,
  parseMark,
  ruleSet,
  type Card,
  type Needed,
  type NeededPass,
  type ResultRow,
} from '#rules';
import { anyCard } from './support/any-card.js';
import { placesOn, valid, withTrial } from './support/card.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

const RUNS = { numRuns: PROPERTY_RUNS };

const unitsOf = (text: string): number => parseMark(text)!.value;
const stepOf = (card: Card): number => ruleSet(card.rules).precision[card.event].value[card.unit];

/** A card, and what is needed of one competitor on it who has a trial to come. */
const cardAndNeeded = fc
  .tuple(anyCard, fc.nat())
  .map(([card, pick]) => {
    const toCome = neededForAll(card).filter(({ next }) => next.round !== null);
    return { card, needed: toCome[pick % toCome.length] };
  })
  .filter((given): given is { card: Card; needed: Needed } => given.needed !== undefined);

/** The least mark of all, and every one from under the worst on the card to the first that beats everybody. */
function marksToTry(card: Card): number[] {
  const step = stepOf(card);
  const marks = card.competitors.flatMap(({ series }) => series.flatMap((trial) => trial?.mark ?? []));
  if (marks.length === 0) return [step];
  const low = Math.min(...marks) - step;
  return [step, ...Array.from({ length: (Math.max(...marks) - low) / step + 2 }, (_, at) => low + at * step)];
}

/** The smallest of the marks with which something is so. */
function smallest(card: Card, isSo: (mark: number) => boolean): number | undefined {
  return marksToTry(card).find(isSo);
}

describe('what is needed for a better place', () => {
  it('is every better place there is to win, each with the smallest mark that brings it', () => {
    fc.assert(
      fc.property(cardAndNeeded, ({ card, needed: { bib, place, places } }) => {
        const expected: { place: number; mark: number }[] = [];
        for (const mark of marksToTry(card)) {
          const won = placesOn(withTrial(card, bib, valid(mark))).get(bib)!;
          if (won < (expected.at(-1)?.place ?? place ?? Infinity)) expected.push({ place: won, mark });
        }
        expect(places.map(({ place: to, mark }) => ({ place: to, mark: unitsOf(mark) }))).toEqual(expected);
      }),
      RUNS,
    );
  });

  it('says rightly who holds the place, whether it is shared and what an equal mark does', () => {
    fc.assert(
      fc.property(cardAndNeeded, ({ card, needed: { bib, places } }) => {
        const rows = countCard(card).results;
        const rowWith = (mark: string): ResultRow =>
          countCard(withTrial(card, bib, valid(unitsOf(mark)))).results.find((row) => row.bib === bib)!;
        const expected = places.map(({ place, mark }) => {
          const holder = rows.find((row) => row.place === place);
          const best = holder && holder.mark !== 'O' ? holder.mark : null;
          const level = best === null ? null : rowWith(best);
          const equalMark =
            level && (level.place! > place ? 'falls-short' : level.equal ? 'shares' : 'takes');
          return {
            place,
            mark,
            shared: rowWith(mark).equal,
            rival: holder ? { bib: holder.bib, best, equalMark } : null,
          };
        });
        // Which of the ways to share it is, is told apart in examples.
        const told = JSON.stringify(places).replaceAll('undecidable', 'shares');
        expect(JSON.parse(told)).toEqual(expected);
      }),
      RUNS,
    );
  });
});

function expectSmallest(card: Card, pass: NeededPass, passes: (mark: number) => boolean): void {
  if (pass.isIn) {
    expect(pass).toMatchObject({ mark: null, rival: null });
    return;
  }
  expect(unitsOf(pass.mark!)).toBe(smallest(card, passes));
  if (pass.rival?.best) expect(pass.rival.equalIsEnough).toBe(passes(unitsOf(pass.rival.best)));
}

describe('what is needed to go on', () => {
  it('through the next cut is the smallest mark that is enough', () => {
    fc.assert(
      fc.property(cardAndNeeded, ({ card, needed: { bib, next, cut } }) => {
        const at = card.plan.cuts.findIndex(({ after }) => after >= next.round!);
        expect(cut?.after).toBe(card.plan.cuts[at]?.after);
        if (!cut) return;
        const isThrough = (one: Card): boolean => cutsOf(one)[at]!.through.includes(bib);
        expect(cut.isIn).toBe(isThrough(card));
        expectSmallest(card, cut, (mark) => isThrough(withTrial(card, bib, valid(mark))));
      }),
      RUNS,
    );
  });

  it('from a qualification is the standard, or the smallest mark that fills it up', () => {
    fc.assert(
      fc.property(cardAndNeeded, ({ card, needed: { bib, standard, fill } }) => {
        expect(standard === null).toBe(card.qualifying === null);
        if (standard === null) return;
        const goesOnAs = (mark: number): string | null =>
          countCard(withTrial(card, bib, valid(mark))).results.find((row) => row.bib === bib)!.qualified;
        const justUnder = unitsOf(standard) - stepOf(card);
        expect([goesOnAs(unitsOf(standard)), goesOnAs(justUnder) === 'Q']).toEqual(['Q', false]);
        if (fill) expectSmallest(card, fill, (mark) => goesOnAs(mark) !== null);
        else expect(goesOnAs(justUnder)).toBe(null);
      }),
      RUNS,
    );
  });

  it('names a next trial for exactly those who are called in the round after their last', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const { order } = countCard(card);
        const expected = card.competitors.map(({ bib, status, guest, series }) => {
          const called = order[String(series.length + 1)]?.includes(bib) ?? false;
          const round = called && !guest && status === null ? series.length + 1 : null;
          return { bib, round, hindered: round === null };
        });
        const actual = neededForAll(card).map(({ bib, next: { round, barrier } }) => {
          return { bib, round, hindered: barrier !== null };
        });
        expect(actual).toEqual(expected);
      }),
      RUNS,
    );
  });
});
