import { drawProblems, type DrawProblem } from './draw-problems.js';
import { hashOf } from './draw-seed.js';
import type { DrawEntry, DrawTerms } from './draw-terms.js';
import { dealOut } from './equal-strength.js';
import { flightSizes } from './flight-sizes.js';
import { generatorOf, type NumberBelow } from './generator.js';
import { compareCodePoints } from './key-order.js';
import { shuffled } from './shuffle.js';

/** The procedure below, by name and version: a draw can only be repeated by the one that made it. */
export const DRAW_PROCEDURE = 'fnv1a-pcg32-shuffle/1';

/** A draw as it was made, with all that it takes to make it again. */
export interface Draw {
  readonly procedure: typeof DRAW_PROCEDURE;
  readonly terms: DrawTerms;
  /** By key. */
  readonly entries: readonly DrawEntry[];
  /** The flights in the order in which they are held, each in the order of competition. */
  readonly flights: readonly (readonly string[])[];
}

export type DrawOutcome =
  | { readonly ok: true; readonly draw: Draw }
  | { readonly ok: false; readonly problems: readonly DrawProblem[] };

/** One stream serves all draws; the seed sets the start. */
const STREAM = 0n;

/**
 * Draws flights and the order within each, so that anybody can draw them again from the published seed:
 *
 * 1. The entries are sorted by key, by code point: who was entered first does not matter.
 * 2. The generator starts with the hash of the seed. The entries are shuffled: this is the lot.
 * 3. Unless the method is `lot`, they are sorted by seed mark, best first; level ones stay in the order of the lot.
 * 4. `seed marks`: from the weakest up, flight by flight. Otherwise they are dealt out best first, forwards and
 *    backwards in turn.
 * 5. Flight by flight the members, sorted by key, are shuffled with the numbers that follow.
 */
export function drawFlights(entries: readonly DrawEntry[], terms: DrawTerms): DrawOutcome {
  const problems = drawProblems(entries, terms);
  if (problems.length > 0) return { ok: false, problems };
  const below = generatorOf(hashOf(terms.seed), STREAM);
  const sorted = entries.toSorted((a, b) => compareCodePoints(a.key, b.key));
  const lot = shuffled(sorted, below);
  const ranking =
    terms.method === 'lot' ? lot : lot.toSorted((a, b) => (b.seedMark ?? 0) - (a.seedMark ?? 0));
  const flights = membersOf(ranking, terms).map((members) => orderByLot(members, below));
  return { ok: true, draw: { procedure: DRAW_PROCEDURE, terms, entries: sorted, flights } };
}

/** Whether a draw is what its own seed gives. */
export function isAsDrawn(draw: Draw): boolean {
  const again = drawFlights(draw.entries, draw.terms);
  if (!again.ok) return false;
  return isSame(again.draw.flights, draw.flights, (flight, other) =>
    isSame(flight, other, (key, same) => key === same),
  );
}

function isSame<T>(a: readonly T[], b: readonly T[], isAlike: (a: T, b: T) => boolean): boolean {
  return a.length === b.length && a.every((one, at) => isAlike(one, b[at]!));
}

function orderByLot(members: readonly DrawEntry[], below: NumberBelow): string[] {
  const keys = members.map(({ key }) => key).sort(compareCodePoints);
  return shuffled(keys, below);
}

function membersOf(ranking: readonly DrawEntry[], terms: DrawTerms): DrawEntry[][] {
  if (terms.method === 'seed marks') return bestLast(ranking, terms.flights);
  const clubs = ranking.map(({ club }) => (terms.clubmatesApart ? club : null));
  const groups = dealOut(clubs, terms.flights);
  return Array.from({ length: terms.flights }, (_, flight) =>
    ranking.filter((_entry, rank) => groups[rank] === flight),
  );
}

function bestLast(ranking: readonly DrawEntry[], flights: number): DrawEntry[][] {
  const weakestFirst = ranking.toReversed();
  let taken = 0;
  return flightSizes(ranking.length, flights).map((size) => weakestFirst.slice(taken, (taken += size)));
}
