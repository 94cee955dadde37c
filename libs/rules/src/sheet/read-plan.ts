import type { Cut, CutTies, Plan, PlanOverrides, Reorder } from '../plan.js';
import { MAX_ROUNDS, resolvePlan, type PlanProblem } from '../progression/resolve-plan.js';
import { ruleSet as anyRuleSet } from '../rule-sets/index.js';
import { LIST, OBJECT, oneOf, WHOLE } from './kinds.js';
import { ObjectReader, readValue } from './object-reader.js';
import { itemOf, type Place } from './place.js';
import { belongs, type Terms } from './read-terms.js';

const PLAN_KEYS = ['rounds', 'cuts', 'cutTies', 'reorderAfter', 'reorder'];
const CUT_KEYS = ['after', 'through'];
const CUT_TIES: readonly CutTies[] = ['next-best', 'mark'];
const REORDERS: readonly Reorder[] = ['reverse', 'leaders-first'];

export interface PlanReading {
  /** The parts that the sheet names itself, as far as they can be read. */
  readonly overrides: PlanOverrides;
  /** What is in force; `undefined`: that is not known, a problem has been reported. */
  readonly plan: Plan | undefined;
  /** The number of rounds, which may be known when the rest of the plan is not. */
  readonly rounds: number | undefined;
}

/** Reads the parts of the plan that a sheet names, and finds the plan in force. */
export function readPlan(sheet: ObjectReader, { ruleSet, stage }: Terms): PlanReading {
  const before = sheet.findings.count;
  const object = belongs(sheet, 'plan') ? sheet.required('plan', OBJECT) : new Map();
  const plan = object && ObjectReader.open(object, sheet.placeOf('plan'), PLAN_KEYS, sheet.findings);
  if (!plan) return { overrides: {}, plan: undefined, rounds: undefined };
  const named = readNamed(plan);
  if (!ruleSet || !stage) {
    checkWithoutRules(plan, named);
    return { overrides: named.overrides, plan: undefined, rounds: undefined };
  }
  const resolved = resolvePlan(ruleSet, stage, named.overrides);
  if (!resolved.ok) report(resolved.problems, plan, named);
  const own = resolvePlan(ruleSet, stage);
  const ownRounds = own.ok ? own.plan.rounds : undefined;
  return {
    overrides: named.overrides,
    plan: resolved.ok && sheet.findings.count === before ? resolved.plan : undefined,
    rounds: sheet.findings.hasAt(plan.placeOf('rounds')) ? undefined : (named.overrides.rounds ?? ownRounds),
  };
}

/** When the rule set is not known, a round lies too late only behind the most rounds that there can be. */
function checkWithoutRules(plan: ObjectReader, named: NamedPlan): void {
  const resolved = resolvePlan(anyRuleSet('WA'), 'final', { rounds: MAX_ROUNDS, ...named.overrides });
  if (!resolved.ok) report(resolved.problems, plan, named);
}

interface NamedPlan {
  readonly overrides: PlanOverrides;
  /** Where the cuts and the new orders that could be read stand. */
  readonly cuts: readonly ObjectReader[];
  readonly reorderAfter: readonly Place[];
}

function readNamed(plan: ObjectReader): NamedPlan {
  const cuts = readCuts(plan);
  const reorderAfter = readReorderAfter(plan);
  // Against a number of rounds that cannot be read nothing lies too late; `NaN` says so to who resolves the plan.
  const rounds = plan.has('rounds') ? (plan.required('rounds', WHOLE) ?? NaN) : undefined;
  const cutTies = plan.optional('cutTies', oneOf(CUT_TIES), undefined);
  const reorder = plan.optional('reorder', oneOf(REORDERS), undefined);
  return {
    overrides: {
      ...(rounds !== undefined && { rounds }),
      ...(cuts && { cuts: cuts.map(({ cut }) => cut) }),
      ...(cutTies && { cutTies }),
      ...(reorderAfter && { reorderAfter: reorderAfter.map(({ round }) => round) }),
      ...(reorder && { reorder }),
    },
    cuts: cuts?.map(({ reader }) => reader) ?? [],
    reorderAfter: reorderAfter?.map(({ place }) => place) ?? [],
  };
}

function readCuts(plan: ObjectReader): { cut: Cut; reader: ObjectReader }[] | undefined {
  const list = plan.optional('cuts', LIST, undefined);
  return list?.flatMap((item, index) => {
    const reader = ObjectReader.open(item, itemOf(plan.placeOf('cuts'), index), CUT_KEYS, plan.findings);
    const after = reader?.required('after', WHOLE);
    const through = reader?.required('through', WHOLE);
    if (!reader || after === undefined || through === undefined) return [];
    return [{ cut: { after, through }, reader }];
  });
}

function readReorderAfter(plan: ObjectReader): { round: number; place: Place }[] | undefined {
  const list = plan.optional('reorderAfter', LIST, undefined);
  return list?.flatMap((item, index) => {
    const place = itemOf(plan.placeOf('reorderAfter'), index);
    const round = readValue(item, place, WHOLE, plan.findings);
    return round === undefined ? [] : [{ round, place }];
  });
}

/** The path of a problem counts what could be read; where it stands in the sheet may be further on. */
function report(problems: readonly PlanProblem[], plan: ObjectReader, named: NamedPlan): void {
  for (const { path, code, message } of problems) {
    const [, key = '', index, field = ''] = path.split('/');
    const cut = key === 'cuts' ? named.cuts[Number(index)] : undefined;
    const place = cut?.placeOf(field) ?? named.reorderAfter[Number(index)] ?? plan.placeOf(key);
    plan.findings.report(place, code, message);
  }
}
