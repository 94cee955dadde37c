import type { Stage } from '../codes.js';
import type { Cut, Plan, PlanOverrides } from '../plan.js';
import type { RuleSet } from '../rule-sets/rule-set.js';

/** Something that makes no plan; `path` is a JSON Pointer from the plan, e.g. `/cuts/1/after`. */
export interface PlanProblem {
  readonly path: string;
  readonly code: 'NOT_RISING' | 'PLAN';
  readonly message: string;
}

export type ResolvedPlan =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly problems: readonly PlanProblem[] };

export const MAX_ROUNDS = 12;

/**
 * The plan in force: the meet's own values in place of the rule set's. Cuts and new orders of the rule set that do
 * not lie before the last round fall away; those that the meet names itself must lie before it. All problems are
 * reported, in the order rounds, cuts, new orders, at most one for each value. New orders are a set: each is made by
 * itself, so that it does not matter which is named first.
 */
export function resolvePlan(ruleSet: RuleSet, stage: Stage, overrides: PlanOverrides = {}): ResolvedPlan {
  const own = (stage === 'qualification' ? ruleSet.qualificationPlan : ruleSet.plan).value;
  const rounds = overrides.rounds ?? own.rounds;
  const roundsProblems = checkRounds(rounds);
  // Against a number of rounds that is none, nothing can lie too late.
  const lastRound = roundsProblems.length === 0 ? rounds : Infinity;
  const problems = [
    ...roundsProblems,
    ...(overrides.cuts ?? []).flatMap((cut, i, cuts) => checkCut(cut, cuts[i - 1], i, lastRound)),
    ...(overrides.reorderAfter ?? []).flatMap((after, i) =>
      checkRound(after, `/reorderAfter/${i}`, 'A new order', lastRound, undefined),
    ),
  ];
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    plan: {
      rounds,
      cuts: overrides.cuts ?? own.cuts.filter((cut) => cut.after < rounds),
      cutTies: overrides.cutTies ?? own.cutTies,
      reorderAfter: overrides.reorderAfter ?? own.reorderAfter.filter((after) => after < rounds),
      reorder: overrides.reorder ?? own.reorder,
    },
  };
}

function checkRounds(rounds: number): PlanProblem[] {
  if (isCount(rounds) && rounds <= MAX_ROUNDS) return [];
  return [plan('/rounds', `A competition has 1 to ${MAX_ROUNDS} rounds, not ${rounds}.`)];
}

function checkCut(cut: Cut, before: Cut | undefined, index: number, lastRound: number): PlanProblem[] {
  const path = `/cuts/${index}`;
  return [
    ...checkRound(cut.after, `${path}/after`, 'A cut', lastRound, before?.after),
    ...checkThrough(cut.through, `${path}/through`, before?.through),
  ];
}

function checkThrough(through: number, path: string, before: number | undefined): PlanProblem[] {
  if (!isCount(through)) return [plan(path, `At least one competitor goes through a cut, not ${through}.`)];
  if (before === undefined || through <= before) return [];
  return [
    notRising(
      path,
      `After a cut to ${before} no more than ${before} can go through the next, not ${through}.`,
    ),
  ];
}

/** A round after which something happens: a round before the last one, and later than the one named before it. */
function checkRound(
  after: number,
  path: string,
  what: string,
  lastRound: number,
  before: number | undefined,
): PlanProblem[] {
  if (!isCount(after)) return [plan(path, `${what} is made after a round, not after ${after}.`)];
  if (after >= lastRound) {
    return [plan(path, `${what} after round ${after} does not lie before the last of ${lastRound} rounds.`)];
  }
  if (before === undefined || after > before) return [];
  return [
    notRising(path, `${what} after round ${after} does not come later than the one after round ${before}.`),
  ];
}

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 1;
}

function plan(path: string, message: string): PlanProblem {
  return { path, code: 'PLAN', message };
}

function notRising(path: string, message: string): PlanProblem {
  return { path, code: 'NOT_RISING', message };
}
