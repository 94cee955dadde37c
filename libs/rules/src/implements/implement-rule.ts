import type { RuleSetCode } from '../codes.js';
import type { Citation } from '../rule-sets/rule-set.js';
import type { Validity } from '../categories/validity.js';
import type { ThrowEventCode } from './throw-event.js';

/** Which implement a category throws: data, with the days on which it is in force. */
export interface ImplementRule {
  /** Under whose rules; `null`: of a country, schools, a club. */
  readonly rules: RuleSetCode | null;
  readonly event: ThrowEventCode;
  readonly sex: 'M' | 'W';
  /** Codes of age categories. */
  readonly ages: readonly string[];
  readonly grams: number;
  readonly valid: Validity;
  readonly cite: Citation;
}

/** Masses in grams of the events that a category has. */
export type Masses = Readonly<Partial<Record<ThrowEventCode, number>>>;

/** A rule for each event of each row: who, the masses, where they come from. */
export function implementRules(
  head: Pick<ImplementRule, 'rules' | 'valid' | 'cite'>,
  rows: readonly (readonly [sex: 'M' | 'W', ages: readonly string[], masses: Masses])[],
): ImplementRule[] {
  return rows.flatMap(([sex, ages, masses]) =>
    Object.entries(masses).map(([event, grams]) => ({
      ...head,
      event: event as ThrowEventCode,
      sex,
      ages,
      grams,
    })),
  );
}
