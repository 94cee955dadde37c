import { compare, fraction, parseDecimal, type Fraction } from '../quantities/fraction.js';

/** How the places of one event give points to clubs. */
export interface Scoring {
  /** Points of the first place, the second, …; places beyond the list give none. */
  readonly places: readonly Fraction[];
  /** At most so many of a club score in one event; `null`: all. */
  readonly scorersPerClub: number | null;
  /**
   * Who does not score (over the club's number, or without a club) is taken out before points are given, so that the
   * next one moves up (`out`), or holds the points of the place, which nobody gets (`hold`).
   */
  readonly nonScorers: 'out' | 'hold';
}

export const MAX_PLACE_POINTS: Fraction = fraction(10_000);
const DECIMALS = 3;

/**
 * Reads the points of one place from a plain decimal such as `7.5`: from 0 to 10,000 with at most three decimals;
 * `null` when it is not that. What `String` makes of a number that was read from JSON will do: for these values it
 * gives back the decimals that were written.
 */
export function parsePlacePoints(text: string): Fraction | null {
  const points = parseDecimal(text);
  if (!points || points.numerator < 0n || compare(points, MAX_PLACE_POINTS) > 0) return null;
  const hasFewDecimals = 10n ** BigInt(DECIMALS) % points.denominator === 0n;
  return hasFewDecimals ? points : null;
}
