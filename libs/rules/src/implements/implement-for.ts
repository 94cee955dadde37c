import { isValidOn } from '../categories/validity.js';
import type { RuleSetCode } from '../codes.js';
import type { Citation, Cited } from '../rule-sets/rule-set.js';
import type { ImplementRule } from './implement-rule.js';
import { IMPLEMENT_RULES } from './implement-rules.js';
import type { DimensionLimit } from './specification.js';
import { specificationOf } from './specifications.js';
import type { ThrowEventCode } from './throw-event.js';

/** The implement of a category with all that is known of it. */
export interface Implement {
  readonly event: ThrowEventCode;
  /** The least mass. */
  readonly grams: number;
  /** Why this category throws it. */
  readonly cite: Citation;
  /** `null`: the dimensions are not known, and the mass alone is checked. */
  readonly limits: Cited<readonly DimensionLimit[]> | null;
}

/**
 * The implement of an age category on a day (`YYYY-MM-DD`). `own`: what the meet or a country lays down, which goes
 * first. `null`: no table says; the meet sets one.
 */
export function implementFor(
  rules: RuleSetCode,
  event: ThrowEventCode,
  sex: 'M' | 'W',
  age: string,
  onDate: string,
  own: readonly ImplementRule[] = [],
): Implement | null {
  const rule = [...own, ...IMPLEMENT_RULES.filter((one) => one.rules === rules)].find(
    (one) => one.event === event && one.sex === sex && one.ages.includes(age) && isValidOn(one.valid, onDate),
  );
  return rule ? implementOf(event, rule.grams, rule.cite) : null;
}

/** An implement by its mass, for whoever throws it. */
export function implementOf(event: ThrowEventCode, grams: number, cite: Citation): Implement {
  return { event, grams, cite, limits: specificationOf(event, grams)?.limits ?? null };
}
