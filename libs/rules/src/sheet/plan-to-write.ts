import type { Card } from '../card.js';
import type { Cut, Plan, PlanOverrides } from '../plan.js';
import { resolvePlan } from '../progression/resolve-plan.js';
import { ruleSet } from '../rule-sets/index.js';
import { plainObject, type PlainJson, type PlainObject } from './json.js';

/**
 * The parts of a plan that a sheet must name: those that were named, when the plan follows from them, else those in
 * which it differs from the rule set's. `undefined`: none.
 */
export function planToWrite(
  { rules, edition, stage, plan }: Pick<Card, 'rules' | 'edition' | 'stage' | 'plan'>,
  named: PlanOverrides,
): PlainObject | undefined {
  const rulesInForce = ruleSet(rules, edition);
  const resolved = resolvePlan(rulesInForce, stage, named);
  if (resolved.ok && samePlan(resolved.plan, plan)) return writePlan(named);
  const own = resolvePlan(rulesInForce, stage);
  // The rule set's cuts and new orders depend on how many rounds there are, so that this is settled first.
  const withRounds = resolvePlan(rulesInForce, stage, { rounds: plan.rounds });
  if (!own.ok || !withRounds.ok) return writePlan(plan);
  const others = { ...withRounds.plan, rounds: own.plan.rounds };
  return writePlan(
    Object.fromEntries(
      PLAN_KEYS.filter((key) => !same(plan[key], others[key])).map((key) => [key, plan[key]]),
    ),
  );
}

const PLAN_KEYS = ['rounds', 'cuts', 'cutTies', 'reorderAfter', 'reorder'] as const;

function samePlan(a: Plan, b: Plan): boolean {
  return PLAN_KEYS.every((key) => same(a[key], b[key]));
}

type PlanValue = Plan[keyof Plan];

function same(a: PlanValue, b: PlanValue): boolean {
  return JSON.stringify(writeValue(a)) === JSON.stringify(writeValue(b));
}

function writePlan(plan: PlanOverrides): PlainObject | undefined {
  const entries = PLAN_KEYS.flatMap((key): [string, PlainJson][] => {
    const value = plan[key];
    return value === undefined ? [] : [[key, writeValue(value)]];
  });
  return entries.length > 0 ? plainObject(entries) : undefined;
}

function writeValue(value: PlanValue): PlainJson {
  if (typeof value !== 'object') return value;
  return value.map((item: Cut | number) =>
    typeof item === 'number' ? item : { after: item.after, through: item.through },
  );
}
