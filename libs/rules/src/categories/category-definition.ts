import type { RuleSetCode } from '../codes.js';
import type { Citation } from '../rule-sets/rule-set.js';
import type { Validity } from './validity.js';

/**
 * On which day an age counts: the last day of the year of the competition; the day of the competition itself; the
 * first day with this month and day that is not before the competition (`next`: a school year that ends then); none,
 * since the ages do not matter.
 */
export type AgeDay =
  | { readonly kind: 'end of year' }
  | { readonly kind: 'day of competition' }
  | { readonly kind: 'next'; readonly month: number; readonly day: number }
  | { readonly kind: 'no age' };

/** One category by age, in completed years, both included; `null`: without a limit. */
export interface AgeBand {
  /** As it stands in a start list beside the sex: `U20`, `senior`, `35`. */
  readonly code: string;
  readonly minAge: number | null;
  readonly maxAge: number | null;
  /** Where the upper limit is looked at on another day than the lower. */
  readonly maxAgeOn?: AgeDay;
}

/** The age categories of a federation, of schools, of a club: data, with the days on which they are in force. */
export interface CategoryDefinition {
  /** Names the scheme; its definitions follow each other in time. */
  readonly scheme: string;
  /** Under whose rules it belongs; `null`: to a country, schools, a club. */
  readonly rules: RuleSetCode | null;
  readonly valid: Validity;
  readonly ageOn: AgeDay;
  /** The first that fits counts. */
  readonly bands: readonly AgeBand[];
  readonly cite: Citation;
}
