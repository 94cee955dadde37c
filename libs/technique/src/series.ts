import { refused, type Refusal } from './answer.js';
import { mean } from './numbers/moments.js';

/** One trial of a competition or one throw of a practice. Passes and trials that were not taken are not in a series. */
export interface Trial {
  /** From 1, as it was thrown; gaps stay. */
  readonly round: number;
  /** Whole centimetres; `null` for a foul. */
  readonly markCm: number | null;
  /** A foul that the thrower made on purpose; it says nothing of the throw, so it is in no foul rate and no link. */
  readonly voidedOnPurpose?: boolean;
}

/** One athlete on one day with one implement: what all comparisons stay within. */
export interface Series<T extends Trial = Trial> {
  readonly id: string;
  /** Days since any fixed day. */
  readonly day: number;
  /** Event, mass and variant in one word of the caller's; two series are compared in centimetres only when it is equal. */
  readonly implement: string;
  readonly trials: readonly T[];
}

/** A trial with a mark. */
export type Marked<T extends Trial = Trial> = T & { readonly markCm: number };

export function isMarked<T extends Trial>(trial: T): trial is Marked<T> {
  return trial.markCm !== null;
}

/** Marks in centimetres, as thrown. */
export function marksOf(series: Series): readonly number[] {
  return series.trials.filter(isMarked).map((trial) => trial.markCm);
}

/** Trials that were meant: all but those voided on purpose. */
export function meantTrials<T extends Trial>(series: Series<T>): readonly T[] {
  return series.trials.filter((trial) => trial.voidedOnPurpose !== true);
}

export function hasMark(series: Series): boolean {
  return series.trials.some(isMarked);
}

/** How many marked throws a series has on average; not a number without series. */
export function marksPerSeries(all: readonly Series[]): number {
  return mean(all.map((series) => marksOf(series).length));
}

/** A refusal when centimetres of different implements would meet. */
export function implementsDiffer(all: readonly Series[]): Refusal | null {
  const implementsSeen = new Set(all.map((series) => series.implement)).size;
  return implementsSeen > 1 ? refused('MIXED_IMPLEMENT', 'implements', implementsSeen, 1) : null;
}
