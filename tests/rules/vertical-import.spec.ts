import fc from 'fast-check';
import {
  applyAllVertical,
  countVertical,
  entriesOfVerticalCard,
  restoreVertical,
  type VerticalCard,
  type VerticalEntry,
} from '#rules';
import { PROPERTY_RUNS } from '../support/property-runs.js';
import { setupOfCard } from './support/bar.js';
import { anyVerticalCard, VERTICAL_CASES } from './support/vertical-sheets.js';

function entered(card: VerticalCard): VerticalEntry[] {
  return entriesOfVerticalCard(card, (bib) => `k${bib}`).map((body, at) => ({
    id: `e${at}`,
    by: 'referee',
    actor: 'rolf',
    ...body,
  }));
}

/** A round of a jump-off is an object by bib, whose order says nothing; one that nobody took leaves no entry. */
function withoutOrderOfTries(card: VerticalCard): VerticalCard {
  const bibs = card.competitors.map(({ bib }) => bib);
  const jumpOff = card.jumpOff
    .filter(({ tries }) => tries.length > 0)
    .map((round) => ({
      ...round,
      tries: round.tries.toSorted((a, b) => bibs.indexOf(a.bib) - bibs.indexOf(b.bib)),
    }));
  return { ...card, jumpOff };
}

/** A `null` at the end of a series says the same as nothing. */
function withoutTrailingNulls(card: VerticalCard): VerticalCard {
  const competitors = card.competitors.map((one) => ({
    ...one,
    series: one.series.slice(0, one.series.findLastIndex((trials) => trials !== null) + 1),
  }));
  return { ...card, competitors };
}

function expectSameCard(card: VerticalCard): void {
  const entries = entered(card);
  const { state, verdicts } = applyAllVertical(setupOfCard(card), entries);
  expect(state.card).toEqual(withoutTrailingNulls(withoutOrderOfTries(card)));
  expect(countVertical(state.card)).toEqual(countVertical(card));
  expect(verdicts.filter(({ standing }) => standing === 'refused')).toEqual([]);
  expect(state.questions).toEqual([]);
  expect(restoreVertical(setupOfCard(card), state.journal)).toEqual(state);
}

describe('a card entered entry by entry', () => {
  it('is what the cases have', () => {
    expect(VERTICAL_CASES.length).toBeGreaterThan(20);
  });

  it.each(VERTICAL_CASES)('is the same card: $name', ({ card }) => {
    expectSameCard(card);
  });

  it('is the same card for any sheet', () => {
    fc.assert(fc.property(anyVerticalCard, expectSameCard), {
      numRuns: Math.round(PROPERTY_RUNS / 6),
      seed: 1,
    });
  }, 120_000);
});
