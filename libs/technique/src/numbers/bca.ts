import { normalCdf, normalQuantile } from './distributions.js';
import { mean, sum } from './moments.js';

export interface Bca {
  readonly low: number;
  readonly high: number;
  /** How far the replicates lie to one side of the estimate. */
  readonly bias: number;
  readonly acceleration: number;
  /** The shares of the replicates below the two ends. */
  readonly shares: readonly [number, number];
}

/**
 * Efron's bias-corrected and accelerated bootstrap interval. `replicates` are the statistic over resamples,
 * `leftOut` over the data less one unit each. Ties count half in the bias; the ends are values of replicates
 * (inverse of their distribution function).
 */
export function bca(
  observed: number,
  replicates: readonly number[],
  leftOut: readonly number[],
  level: number,
): Bca {
  const sorted = [...replicates].sort((a, b) => a - b);
  const below = sorted.filter((value) => value < observed).length;
  const equal = sorted.filter((value) => value === observed).length;
  const bias = normalQuantile((below + equal / 2) / sorted.length);
  const centre = mean(leftOut);
  const cubes = sum(leftOut.map((value) => (centre - value) ** 3));
  const squares = sum(leftOut.map((value) => (centre - value) ** 2));
  const acceleration = squares === 0 ? 0 : cubes / (6 * squares ** 1.5);
  const shareAt = (p: number): number => {
    const z = bias + normalQuantile(p);
    return normalCdf(bias + z / (1 - acceleration * z));
  };
  const shares = [shareAt((1 - level) / 2), shareAt((1 + level) / 2)] as const;
  const [low, high] = shares.map((share) => valueAt(sorted, share)) as [number, number];
  return { low, high, bias, acceleration, shares };
}

/** The least value that at least a share of all do not exceed. */
function valueAt(sorted: readonly number[], share: number): number {
  const place = Math.ceil(share * sorted.length - 1e-9);
  return sorted[Math.min(Math.max(place, 1), sorted.length) - 1] ?? Number.NaN;
}
