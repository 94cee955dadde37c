import { compare, fraction, type Fraction } from '../quantities/fraction.js';
import type { Wind } from '../quantities/wind.js';
import { cited } from '../rule-sets/citing.js';
import type { Cited } from '../rule-sets/rule-set.js';
import type { CombinedTable } from './combined-tables.js';
import type { CombinedEventCode } from './scoring-table.js';

/** How much wind a total may have had to count for records and lists, in whole tenths of m/s. It never changes points. */
export interface CombinedWindRule {
  /** At most, for the algebraic mean of the events with wind. */
  readonly meanTenths: number;
  /** At most, for each of them as well; `null`: no matter. */
  readonly eachTenths: number | null;
}

const MEAN_ONLY = cited<CombinedWindRule>(
  { meanTenths: 20, eachTenths: null },
  'WA CR31, combined events',
  'read in part',
  'Counting the wind of the best jump, and adding with the sign, are from memory.',
);

const MEAN_AND_EACH = cited<CombinedWindRule>(
  { meanTenths: 20, eachTenths: 40 },
  'IAAF Rule 260 before the book of 2010',
  'read in part',
  'Seen on a public page about decathlons, not in the book.',
);

/** The rule in force on a day (`2010-05-30`). The book of 2010 is taken to be in force from the first of January. */
export function combinedWindRule(onDate: string): Cited<CombinedWindRule> {
  return onDate >= '2010-01-01' ? MEAN_ONLY : MEAN_AND_EACH;
}

const WITH_WIND: readonly CombinedEventCode[] = ['100m', '200m', '100mh', '110mh', 'long-jump'];

/** The events of a programme in which wind is measured; none indoors. */
export function windEventsOf(table: CombinedTable): readonly CombinedEventCode[] {
  return table.indoor ? [] : table.events.filter((event) => WITH_WIND.includes(event));
}

export interface CombinedWind {
  /** `null`: not known, since one wind is not, and the others do not decide. */
  readonly legal: boolean | null;
  /** Tenths of m/s, exact; `null`: not known, or nothing was measured in. */
  readonly meanTenths: Fraction | null;
  /** What decided. */
  readonly because: 'mean' | 'each' | 'not known' | 'no wind';
}

/**
 * Whether a total may count for records as far as wind decides it.
 * @param winds of the events with wind: in a race the wind of the heat, in the long jump that of the trial that counts;
 * `null` where there is no mark, which leaves the event out of the mean (constructed: no text says).
 */
export function combinedWindOf(winds: readonly (Wind | null)[], rule: CombinedWindRule): CombinedWind {
  const counted = winds.filter((wind) => wind !== null);
  if (counted.length === 0) return { legal: true, meanTenths: null, because: 'no wind' };
  const known = counted.filter((wind) => typeof wind === 'number');
  const mean = known.length === counted.length ? meanOf(known) : null;
  const { eachTenths } = rule;
  if (eachTenths !== null && known.some((wind) => wind > eachTenths)) {
    return { legal: false, meanTenths: mean, because: 'each' };
  }
  if (mean === null) return { legal: null, meanTenths: null, because: 'not known' };
  return { legal: compare(mean, fraction(rule.meanTenths)) <= 0, meanTenths: mean, because: 'mean' };
}

function meanOf(tenths: readonly number[]): Fraction {
  return fraction(
    tenths.reduce((sum, one) => sum + one, 0),
    tenths.length,
  );
}
