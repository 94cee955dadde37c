import type { RuleSetCode } from '../codes.js';
import { NCAA_2025 } from './ncaa.js';
import { NFHS_2025 } from './nfhs.js';
import type { RuleSet } from './rule-set.js';
import { USATF_2025 } from './usatf.js';
import { WA_2024 } from './wa.js';
import { WMA_2024 } from './wma.js';

/** Every edition of every rule set, the newest last. */
export const RULE_SETS: Readonly<Record<RuleSetCode, readonly [RuleSet, ...RuleSet[]]>> = {
  WA: [WA_2024],
  NFHS: [NFHS_2025],
  NCAA: [NCAA_2025],
  USATF: [USATF_2025],
  WMA: [WMA_2024],
};

/** The editions of a rule set, the newest last. */
export function editionsOf(code: RuleSetCode): readonly string[] {
  return RULE_SETS[code].map((ruleSet) => ruleSet.edition);
}

/**
 * A rule set in one edition; without one, in the newest.
 * @throws RangeError for an edition that `editionsOf` does not list: a reader checks that first.
 */
export function ruleSet(code: RuleSetCode, edition?: string): RuleSet {
  const editions = RULE_SETS[code];
  if (edition === undefined) return editions.at(-1) ?? editions[0];
  const found = editions.find((candidate) => candidate.edition === edition);
  if (!found)
    throw new RangeError(`${code} has no edition "${edition}", only ${editionsOf(code).join(', ')}.`);
  return found;
}
