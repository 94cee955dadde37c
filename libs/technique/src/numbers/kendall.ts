import { normalCdf } from './distributions.js';
import { sum } from './moments.js';
import { tieSizes, type Side } from './rank-tests.js';

export interface Kendall {
  /** Pairs that run the same way less pairs that run opposite ways. */
  readonly score: number;
  /** Pairs that run the same way: T of R's exact test. */
  readonly concordant: number;
  /** tau-b: equal to tau where nothing is tied; `null` where everything is. */
  readonly tau: number | null;
  readonly p: number;
  readonly exact: boolean;
}

/** Up to here without ties the p is counted exactly; R does the same below 50. */
const EXACT_UP_TO = 50;

export function kendall(x: readonly number[], y: readonly number[], side: Side = 'two-sided'): Kendall {
  const count = x.length;
  let [concordant, discordant] = [0, 0];
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const way = Math.sign((x[j] ?? 0) - (x[i] ?? 0)) * Math.sign((y[j] ?? 0) - (y[i] ?? 0));
      if (way > 0) concordant++;
      if (way < 0) discordant++;
    }
  }
  const score = concordant - discordant;
  const pairs = (count * (count - 1)) / 2;
  const [tiesX, tiesY] = [tieSizes(x), tieSizes(y)];
  const tiedPairs = (sizes: readonly number[]): number => sum(sizes.map((size) => (size * (size - 1)) / 2));
  const untied = Math.sqrt((pairs - tiedPairs(tiesX)) * (pairs - tiedPairs(tiesY)));
  const exact = tiesX.length === 0 && tiesY.length === 0 && count < EXACT_UP_TO;
  const p = exact
    ? exactP(count, concordant, side)
    : approximateP(score, kendallVariance(count, tiesX, tiesY), side);
  return { score, concordant, tau: untied === 0 ? null : score / untied, p, exact };
}

/** Variance of the score when nothing is linked (Kendall 1970), with ties in either. */
export function kendallVariance(
  count: number,
  tiesX: readonly number[],
  tiesY: readonly number[] = [],
): number {
  const whole = (size: number): number => size * (size - 1) * (2 * size + 5);
  const over = (sizes: readonly number[], by: (size: number) => number): number => sum(sizes.map(by));
  const pair = (size: number): number => size * (size - 1);
  const triple = (size: number): number => size * (size - 1) * (size - 2);
  const both = (over(tiesX, pair) * over(tiesY, pair)) / (2 * pair(count));
  const three = count < 3 ? 0 : (over(tiesX, triple) * over(tiesY, triple)) / (9 * triple(count));
  return (whole(count) - over(tiesX, whole) - over(tiesY, whole)) / 18 + both + three;
}

/** From the numbers of orders of `count` things with each number of inversions. */
function exactP(count: number, concordant: number, side: Side): number {
  let shares: number[] = [1];
  for (let size = 2; size <= count; size++) {
    const next = new Array<number>(shares.length + size - 1).fill(0);
    shares.forEach((share, at) => {
      for (let more = 0; more < size; more++) next[at + more] = (next[at + more] ?? 0) + share / size;
    });
    shares = next;
  }
  const greater = sum(shares.slice(concordant));
  if (side === 'greater') return greater;
  return Math.min(1, 2 * Math.min(greater, sum(shares.slice(0, concordant + 1))));
}

function approximateP(score: number, spread: number, side: Side): number {
  if (spread <= 0) return 1;
  const z = score / Math.sqrt(spread);
  return side === 'greater' ? normalCdf(-z) : Math.min(1, 2 * normalCdf(-Math.abs(z)));
}
