import type { Answer } from '../answer.js';
import { notedBlind, type AssessedSeries } from './assessed.js';
import { faultEffect, type EffectOptions, type FaultEffect } from './fault-effect.js';

/** One answer and the lines that show how much it hangs on how it was got. */
export interface EffectLines {
  /** Only throws noted before the mark was known. */
  readonly primary: Answer<FaultEffect>;
  /** All throws that were looked at: whoever knows the mark sees faults in short throws. */
  readonly all: Answer<FaultEffect>;
  /** With the round taken out. */
  readonly roundTakenOut: Answer<FaultEffect>;
  /** Per step of severity. */
  readonly perSeverity: Answer<FaultEffect>;
}

/** `chance` is made anew for every line, so that each is the same whichever are asked for. */
export function effectLines(
  all: readonly AssessedSeries[],
  options: Omit<EffectOptions, 'chance' | 'asDose' | 'round'>,
  newChance: () => EffectOptions['chance'],
): EffectLines {
  const blind = notedBlind(all);
  const line = (series: readonly AssessedSeries[], more: Partial<EffectOptions> = {}): Answer<FaultEffect> =>
    faultEffect(series, { ...options, ...more, chance: newChance() });
  return {
    primary: line(blind),
    all: line(all),
    roundTakenOut: line(blind, { round: 'covariate' }),
    perSeverity: line(blind, { asDose: true }),
  };
}
