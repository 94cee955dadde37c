import type { Interval } from '../answer.js';
import { betaQuantile, zOf } from '../numbers/distributions.js';
import { sum } from '../numbers/moments.js';
import { analyseVariance, intraclassCorrelation } from '../numbers/variance-analysis.js';

/** Wilson's interval of k in n; both may be fractions once a design effect has shrunk them. */
export function wilson(k: number, n: number, level: number): Interval {
  const z2 = zOf(level) ** 2;
  const p = k / n;
  const whole = 1 + z2 / n;
  const centre = (p + z2 / (2 * n)) / whole;
  const half = Math.sqrt(z2 * ((p * (1 - p)) / n + z2 / (4 * n ** 2))) / whole;
  return {
    low: k === 0 ? 0 : Math.max(0, centre - half),
    high: k === n ? 1 : Math.min(1, centre + half),
    level,
  };
}

/** Jeffreys' interval, the middle of Beta(k + ½, n − k + ½); open to 0 or 1 where nothing or everything was seen. */
export function jeffreys(k: number, n: number, level: number): Interval {
  const at = (p: number): number => betaQuantile(p, k + 0.5, n - k + 0.5);
  return { low: k === 0 ? 0 : at((1 - level) / 2), high: k === n ? 1 : at((1 + level) / 2), level };
}

/** Clopper and Pearson's interval, which never holds the truth less often than it says. */
export function clopperPearson(k: number, n: number, level: number): Interval {
  const tail = (1 - level) / 2;
  return {
    low: k === 0 ? 0 : betaQuantile(tail, k, n - k + 1),
    high: k === n ? 1 : betaQuantile(1 - tail, k + 1, n - k),
    level,
  };
}

export interface ClusteredProportion {
  readonly k: number;
  readonly n: number;
  /** Series that have at least one throw in it. */
  readonly clusters: number;
  /** How alike throws of one series are; `null` for one series or where nothing varies. */
  readonly icc: number | null;
  /** How many times more throws are needed than if they were independent. */
  readonly designEffect: number;
  /** `null` for one series: how series differ is not known then. */
  readonly interval: Interval | null;
}

/** A share over throws that hang together by series: Wilson's interval with n / (1 + (m̄ − 1) · ICC) throws. */
export function clusteredProportion(
  clusters: readonly (readonly boolean[])[],
  level: number,
): ClusteredProportion {
  const groups = clusters.filter((cluster) => cluster.length > 0).map((cluster) => cluster.map(Number));
  const n = sum(groups.map((group) => group.length));
  const k = sum(groups.flat());
  const analysis = analyseVariance(groups);
  const icc = analysis && intraclassCorrelation(analysis);
  const designEffect = 1 + (n / groups.length - 1) * Math.max(icc ?? 0, 0);
  const effective = n / designEffect;
  return {
    k,
    n,
    clusters: groups.length,
    icc,
    designEffect: groups.length === 0 ? 1 : designEffect,
    interval: groups.length < 2 ? null : wilson((k / n) * effective, effective, level),
  };
}
