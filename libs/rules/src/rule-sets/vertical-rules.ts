import type { Unit } from '../quantities/mark.js';
import type { Citation, Cited, VerticalTimeAllowed } from './rule-set.js';

/** By how much the bar is raised, in whole units. */
export type Step = Readonly<Record<Unit, number>>;

/** How one vertical jump is held under one edition of one federation's rules. */
export interface VerticalRules {
  /** Three failures in a row, at whatever heights; no further trial at a height that was passed. */
  readonly trials: Citation;
  /** The bar is never raised by less, and the step never grows, until one competitor is left and has won. */
  readonly minimumStep: Cited<Step>;
  /** In combined events the bar is raised by this step throughout. */
  readonly combinedStep: Cited<Step>;
  /** When the winner chooses the heights. */
  readonly winnerChooses: Citation;
  /** By how much the bar is raised or lowered in the jump-off. */
  readonly jumpOffStep: Cited<Step>;
  /**
   * Where the jump-off starts: at the next announced height after the last one cleared, or at the height at which
   * those level for first failed.
   */
  readonly jumpOffStart: Cited<'next height' | 'height failed'>;
  /** Whether a competitor's next trial counts as consecutive when the bar was raised in between. */
  readonly consecutiveAcrossHeights: Cited<boolean>;
  readonly combinedTime: Cited<VerticalTimeAllowed>;
  /** Where the uprights of the pole vault may stand, in centimetres behind the zero line. */
  readonly uprightsCm: Cited<{ readonly min: number; readonly max: number }>;
}

/** The same rules cited in another federation's name. */
export function citedBy(rules: VerticalRules, follow: (cite: Citation) => Citation): VerticalRules {
  const takeOver = <T>({ value, cite }: Cited<T>): Cited<T> => ({ value, cite: follow(cite) });
  return {
    trials: follow(rules.trials),
    minimumStep: takeOver(rules.minimumStep),
    combinedStep: takeOver(rules.combinedStep),
    winnerChooses: follow(rules.winnerChooses),
    jumpOffStep: takeOver(rules.jumpOffStep),
    jumpOffStart: takeOver(rules.jumpOffStart),
    consecutiveAcrossHeights: takeOver(rules.consecutiveAcrossHeights),
    combinedTime: takeOver(rules.combinedTime),
    uprightsCm: takeOver(rules.uprightsCm),
  };
}
