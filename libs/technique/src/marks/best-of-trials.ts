import { normalCdf, normalDensity } from '../numbers/distributions.js';
import { integrate } from '../numbers/integrate.js';

/** A throw is normal around the level of its day, the day's level normal around the athlete's; some throws are fouls. */
export interface ThrowModel {
  readonly meanCm: number;
  /** Of a throw around its day's level. */
  readonly throwSdCm: number;
  /** Of a day's level around the athlete's. */
  readonly daySdCm: number;
  /** From 0 to 1. */
  readonly foulRate: number;
  readonly trials: number;
}

/** How far out the day's level is followed: beyond lies less than 10⁻¹⁵. */
const REACH = 8;

/** P(best ≥ mark) = 1 − ∫ [f + (1 − f) Φ((S − μ − b)/σ)]ⁿ φ_τ(b) db, by adaptive Simpson. */
export function chanceOfBest(model: ThrowModel, markCm: number): number {
  const { meanCm, throwSdCm, daySdCm, foulRate, trials } = model;
  const noneReaches = (dayCm: number): number =>
    (foulRate + (1 - foulRate) * normalCdf((markCm - meanCm - dayCm) / throwSdCm)) ** trials;
  if (daySdCm === 0) return 1 - noneReaches(0);
  return 1 - integrate((z) => noneReaches(z * daySdCm) * normalDensity(z), -REACH, REACH, 1e-9);
}

export interface ExpectedBest {
  /** Of those series that have a mark. */
  readonly bestCm: number;
  /** Chance of a series without a mark: fⁿ. */
  readonly noMark: number;
}

/** E(best | a mark) = ∫ (1 − F), F = ((f + (1 − f)Φ)ⁿ − fⁿ)/(1 − fⁿ). The day moves every series alike and drops out. */
export function expectedBest({ meanCm, throwSdCm, foulRate, trials }: ThrowModel): ExpectedBest {
  const noMark = foulRate ** trials;
  const below = (z: number): number =>
    ((foulRate + (1 - foulRate) * normalCdf(z)) ** trials - noMark) / (1 - noMark);
  // E(Z) from both sides of zero.
  const above = integrate((z) => 1 - below(z), 0, REACH + 1, 1e-10);
  const under = integrate(below, -REACH - 1, 0, 1e-10);
  return { bestCm: meanCm + throwSdCm * (above - under), noMark };
}

/** What fouling more often costs the expected best of a series, in centimetres. */
export function foulCost(model: ThrowModel, lessOften: number, moreOften: number): number {
  const at = (foulRate: number): number => expectedBest({ ...model, foulRate }).bestCm;
  return at(lessOften) - at(moreOften);
}

/** The mean squared miss of forecasts that have come true or not: 0 is perfect, 0.25 says nothing. */
export function brierScore(
  forecasts: readonly { readonly chance: number; readonly reached: boolean }[],
): number {
  const misses = forecasts.map(({ chance, reached }) => (chance - (reached ? 1 : 0)) ** 2);
  return misses.reduce((total, miss) => total + miss, 0) / forecasts.length;
}
