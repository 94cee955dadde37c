import { chiSquareCdf } from './distributions.js';
import { sum } from './moments.js';

export type Side = 'greater' | 'two-sided';

export interface RankTest {
  readonly statistic: number;
  readonly p: number;
}

/** Ranks from 1; equal values share the middle of theirs. */
export function ranksOf(values: readonly number[]): readonly number[] {
  const order = values.map((_, at) => at).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0));
  const ranks = new Array<number>(values.length).fill(0);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1] ?? 0] === values[order[from] ?? 0]) to++;
    for (let at = from; at <= to; at++) ranks[order[at] ?? 0] = (from + to) / 2 + 1;
    from = to + 1;
  }
  return ranks;
}

/**
 * Exact p from how many of the equally likely arrangements give each value; two-sided is twice the smaller tail. The
 * values are doubled ranks, so that shared ranks are whole numbers too.
 */
function tailsOf(counts: readonly number[], doubled: number, side: Side): number {
  const all = sum(counts);
  const greater = sum(counts.slice(doubled)) / all;
  if (side === 'greater') return greater;
  const less = sum(counts.slice(0, doubled + 1)) / all;
  return Math.min(1, 2 * Math.min(greater, less));
}

/** Wilcoxon's signed-rank test of x − y, exact also with ties; pairs without a difference are left out. */
export function signedRank(x: readonly number[], y: readonly number[], side: Side = 'two-sided'): RankTest {
  const differences = x.map((value, at) => value - (y[at] ?? Number.NaN)).filter((one) => one !== 0);
  const doubled = ranksOf(differences.map(Math.abs)).map((rank) => Math.round(2 * rank));
  const observed = sum(doubled.filter((_, at) => (differences[at] ?? 0) > 0));
  let counts: number[] = [1];
  for (const rank of doubled) {
    const next = [...counts, ...new Array<number>(rank).fill(0)];
    counts.forEach((count, at) => (next[at + rank] = (next[at + rank] ?? 0) + count));
    counts = next;
  }
  return { statistic: observed / 2, p: tailsOf(counts, observed, side) };
}

/** Wilcoxon's rank-sum test (Mann and Whitney), exact also with ties; the statistic is W of R: U of x. */
export function rankSum(x: readonly number[], y: readonly number[], side: Side = 'two-sided'): RankTest {
  const doubled = ranksOf([...x, ...y]).map((rank) => Math.round(2 * rank));
  const observed = sum(doubled.slice(0, x.length));
  const most = sum(doubled);
  // ways[k][s]: subsets of k values whose doubled ranks add up to s.
  const ways = Array.from({ length: x.length + 1 }, () => new Array<number>(most + 1).fill(0));
  (ways[0] as number[])[0] = 1;
  doubled.forEach((rank, seen) => {
    for (let size = Math.min(seen + 1, x.length); size > 0; size--) {
      const [from, to] = [ways[size - 1] as number[], ways[size] as number[]];
      for (let total = most; total >= rank; total--) to[total] = (to[total] ?? 0) + (from[total - rank] ?? 0);
    }
  });
  const statistic = observed / 2 - (x.length * (x.length + 1)) / 2;
  return { statistic, p: tailsOf(ways[x.length] as number[], observed, side) };
}

/** Kruskal and Wallis, by the chi-square approximation, corrected for ties. */
export function kruskalWallis(
  groups: readonly (readonly number[])[],
): RankTest & { readonly freedom: number } {
  const all = groups.flat();
  const ranks = ranksOf(all);
  const count = all.length;
  let from = 0;
  let between = 0;
  for (const group of groups) {
    between += sum(ranks.slice(from, from + group.length)) ** 2 / group.length;
    from += group.length;
  }
  const plain = (12 / (count * (count + 1))) * between - 3 * (count + 1);
  const ties = sum(tieSizes(all).map((size) => size ** 3 - size));
  const statistic = plain / (1 - ties / (count ** 3 - count));
  const freedom = groups.length - 1;
  return { statistic, freedom, p: 1 - chiSquareCdf(statistic, freedom) };
}

/** How many share each value that several share. */
export function tieSizes(values: readonly number[]): readonly number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((count) => count > 1);
}
