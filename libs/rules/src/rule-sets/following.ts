import type { RuleSetCode } from '../codes.js';
import { eachEvent } from './each-event.js';
import type { Citation, Cited, RuleSet } from './rule-set.js';
import { citedBy } from './vertical-rules.js';
import { WA_2024 } from './wa.js';

/**
 * The values of World Athletics taken over by another federation's rule set, where its own text was not seen: each
 * names the rule that it is taken from and counts as memory. The rule set replaces what it states itself.
 */
export function followingWorldAthletics(code: RuleSetCode): Omit<RuleSet, 'code' | 'edition' | 'name'> {
  const follow = (cite: Citation): Citation => ({ rule: `${code}, as ${cite.rule}`, basis: 'memory' });
  const takeOver = <T>({ value, cite }: Cited<T>): Cited<T> => ({ value, cite: follow(cite) });
  return {
    plan: takeOver(WA_2024.plan),
    qualificationPlan: takeOver(WA_2024.qualificationPlan),
    precision: eachEvent((event) => takeOver(WA_2024.precision[event])),
    windLimit: takeOver(WA_2024.windLimit),
    timeAllowed: takeOver(WA_2024.timeAllowed),
    verticalTimeAllowed: {
      'high-jump': takeOver(WA_2024.verticalTimeAllowed['high-jump']),
      'pole-vault': takeOver(WA_2024.verticalTimeAllowed['pole-vault']),
    },
    vertical: {
      'high-jump': citedBy(WA_2024.vertical['high-jump'], follow),
      'pole-vault': citedBy(WA_2024.vertical['pole-vault'], follow),
    },
    fouls: eachEvent((event) => WA_2024.fouls[event].map(takeOver)),
    ties: follow(WA_2024.ties),
    verticalTies: follow(WA_2024.verticalTies),
    jumpOff: follow(WA_2024.jumpOff),
    draw: follow(WA_2024.draw),
    flightSize: takeOver(WA_2024.flightSize),
    orderChange: takeOver(WA_2024.orderChange),
    combinedOrderChange: takeOver(WA_2024.combinedOrderChange),
    protests: {
      windows: {
        rules: takeOver(WA_2024.protests.windows.rules),
        clerical: takeOver(WA_2024.protests.windows.clerical),
        eligibility: takeOver(WA_2024.protests.windows.eligibility),
        judgement: takeOver(WA_2024.protests.windows.judgement),
      },
      appealMinutes: takeOver(WA_2024.protests.appealMinutes),
      measuredUnderProtest: follow(WA_2024.protests.measuredUnderProtest),
      deposit: follow(WA_2024.protests.deposit),
    },
    disqualifications: WA_2024.disqualifications.map(takeOver),
  };
}
