import { normalQuantile } from '../numbers/distributions.js';

/** One-sided 80 % power at a two-sided 5 % level: 1.960 + 0.842. */
function reach(power: number, alpha: number): number {
  return normalQuantile(1 - alpha / 2) + normalQuantile(power);
}

export interface EffectPlan {
  readonly series: number;
  readonly throwsPerSeries: number;
  /** Share of throws with the fault, from 0 to 1. */
  readonly prevalence: number;
  /** Spread of throws within a series, in per cent. */
  readonly sdPercent: number;
}

export interface PlannedEffect {
  readonly errorPercent: number;
  /** The least effect that would be found four times in five. */
  readonly leastPercent: number;
}

/**
 * What an amount of data could show of one fault within series: error = s / √(n p (1 − p) (m − 1)/m). The last factor
 * is what the mean of each series of m takes.
 */
export function plannedEffect(plan: EffectPlan, power = 0.8, alpha = 0.05): PlannedEffect {
  const { series, throwsPerSeries, prevalence, sdPercent } = plan;
  const within = (throwsPerSeries - 1) / throwsPerSeries;
  const telling = series * throwsPerSeries * prevalence * (1 - prevalence) * within;
  const errorPercent = sdPercent / Math.sqrt(telling);
  return { errorPercent, leastPercent: reach(power, alpha) * errorPercent };
}

/** Throws with the fault, and as many without, for an effect to be found with a power: 2 (z s / effect)². */
export function throwsPerArm(sdPercent: number, effectPercent: number, power = 0.8, alpha = 0.05): number {
  return Math.ceil(2 * ((reach(power, alpha) * sdPercent) / effectPercent) ** 2 - 1e-9);
}

/**
 * About how many further throws would make the interval too narrow to hold both no effect and the one that was
 * estimated: the error falls with the root of the throws. `null` when the estimate is nothing.
 */
export function furtherThrows(
  throws: number,
  beta: number,
  standardError: number,
  level = 0.9,
): number | null {
  if (beta === 0) return null;
  const times = ((normalQuantile((1 + level) / 2) * standardError) / beta) ** 2;
  return Math.max(0, Math.ceil(throws * (times - 1)));
}
