import { implementsDiffer, marksOf, type Series } from '../series.js';
import type { Refusal } from '../answer.js';
import { median } from '../numbers/quantiles.js';

export interface BestAndMedian {
  readonly series: string;
  readonly day: number;
  readonly count: number;
  readonly bestCm: number;
  readonly medianCm: number;
  readonly gapCm: number;
}

/**
 * How far the best of each series lies above its middle. A best grows with the number of marks, so only rows of equal
 * `count` may be set side by side. Series without a mark are left out.
 */
export function bestAndMedian(all: readonly Series[]): readonly BestAndMedian[] | Refusal {
  const differ = implementsDiffer(all);
  if (differ) return differ;
  return all.flatMap((series) => {
    const marks = marksOf(series);
    if (marks.length === 0) return [];
    const [bestCm, medianCm] = [Math.max(...marks), median(marks)];
    const { id, day } = series;
    return [{ series: id, day, count: marks.length, bestCm, medianCm, gapCm: bestCm - medianCm }];
  });
}
