import type { HoldCode } from '../journal/verdict.js';
import { ruleSet } from '../rule-sets/index.js';
import type { BarEntry } from './entry.js';
import { winnerOf } from './progress.js';
import type { VerticalSetup } from './setup.js';
import type { VerticalState } from './state.js';

/** What is against the rules in the heights announced before the start. */
export interface ProgressionProblem {
  /** Index of the height that is wrong. */
  readonly index: number;
  readonly code: ProgressionFault;
}

export type ProgressionFault = Extract<
  HoldCode,
  'BAR_NOT_RISING' | 'BAR_STEP_TOO_SMALL' | 'BAR_STEP_GROWS' | 'BAR_STEP_NOT_UNIFORM'
>;

type Rules = Pick<VerticalSetup, 'rules' | 'edition' | 'event' | 'unit' | 'combined'>;

/** Checks heights before they are announced: advice, since the regulations of a meet may set them otherwise. */
export function progressionProblems(rules: Rules, heights: readonly number[]): ProgressionProblem[] {
  return heights.flatMap((height, index) => {
    const code = index === 0 ? null : raiseFault(rules, height, heights[index - 1]!, heights[index - 2]);
    return code ? [{ index, code }] : [];
  });
}

/** `before`: the height from which the bar is raised; `earlier`: the one from which it was raised to that. */
function raiseFault(rules: Rules, height: number, before: number, earlier?: number): ProgressionFault | null {
  const { minimumStep, combinedStep } = ruleSet(rules.rules, rules.edition).vertical[rules.event];
  const step = height - before;
  if (step <= 0) return 'BAR_NOT_RISING';
  if (rules.combined) return step === combinedStep.value[rules.unit] ? null : 'BAR_STEP_NOT_UNIFORM';
  if (step < minimumStep.value[rules.unit]) return 'BAR_STEP_TOO_SMALL';
  return earlier !== undefined && step > before - earlier ? 'BAR_STEP_GROWS' : null;
}

/**
 * Why a setting of the bar waits for the referee; `null`: it follows the announced heights, the winner chose it, or it
 * is a step that the rules allow.
 */
export function barHold(state: VerticalState, { height, leavesOut }: BarEntry): HoldCode | null {
  const jumpedAt = state.heights.filter((one) => isJumpedAt(state, one));
  if (height < Math.max(state.barSet ?? 0, ...jumpedAt)) return 'BAR_NOT_RISING';
  const isAnnounced = state.heights.includes(height) && leavesOut.length === 0;
  if (isAnnounced || winnerOf(state)?.choosesHeight) return null;
  // Heights that nobody has used yet do not say from where the bar is raised.
  const skipped = new Set(leavesOut);
  const used = state.heights.filter((one) => one < height && !skipped.has(one) && isUsed(state, one));
  const before = used.at(-1);
  return before === undefined ? null : raiseFault(state.setup, height, before, used.at(-2));
}

function isUsed(state: VerticalState, height: number): boolean {
  const index = state.heights.indexOf(height);
  return state.competitors.some(({ series }) => (series[index]?.length ?? 0) > 0);
}

/** Whether somebody has jumped at a height, other than by passing it. */
export function isJumpedAt(state: VerticalState, height: number): boolean {
  return [...state.attempts.values()].some(
    ({ kind, standing, judgement, ...jump }) =>
      kind === 'jump' &&
      standing === 'counts' &&
      jump.height === height &&
      (judgement.outcome === 'cleared' || judgement.outcome === 'failed'),
  );
}

/** The heights below a new one at which nobody has an entry: what a desk proposes to leave out. */
export function heightsWithoutEntry(state: VerticalState, height: number): number[] {
  const lastUsed = state.heights.findLast((lower) => lower < height && isUsed(state, lower)) ?? 0;
  return state.heights.filter((lower) => lower > lastUsed && lower < height);
}
