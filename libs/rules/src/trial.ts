import type { Wind } from './quantities/wind.js';

/**
 * How one trial of a throw or a horizontal jump ended. `valid` has a mark; `unmeasured` is valid but was not
 * measured (a minimum-distance line); `retired` ends the series.
 */
export type Outcome = 'valid' | 'unmeasured' | 'foul' | 'pass' | 'retired';

/** One trial. `mark` in whole units of the competition, present exactly for `valid`. */
export interface Trial {
  readonly outcome: Outcome;
  readonly mark: number | null;
  readonly wind: Wind | null;
}

/** A competitor's trials by round, index 0 = round 1; `null` = not taken (yet). */
export type Series = readonly (Trial | null)[];
