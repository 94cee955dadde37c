import { refused, type Answer } from '../answer.js';
import { mean, standardDeviation } from '../numbers/moments.js';
import { quantileOfSorted } from '../numbers/quantiles.js';
import { implementsDiffer, isMarked, marksOf, meantTrials, type Series } from '../series.js';

export interface MarkSummary {
  readonly meanCm: number;
  readonly sdCm: number;
  readonly medianCm: number;
  readonly quartilesCm: readonly [number, number];
}

export interface MarkDistribution {
  /** Throws with a mark. */
  readonly count: number;
  readonly fouls: number;
  readonly bestCm: number;
  readonly worstCm: number;
  /** Every mark with its series, for a strip plot: a mean alone hides what happened. */
  readonly marks: readonly { readonly series: string; readonly round: number; readonly markCm: number }[];
  /** `null` for fewer than three marks: the list says it all. */
  readonly summary: MarkSummary | null;
}

const LEAST_FOR_SUMMARY = 3;

/** How the marks of one implement lie. The spread holds progress too, so it is not consistency. */
export function markDistribution(all: readonly Series[]): Answer<MarkDistribution> {
  const differ = implementsDiffer(all);
  if (differ) return differ;
  const sorted = all.flatMap(marksOf).sort((a, b) => a - b);
  const [worstCm, bestCm] = [sorted[0], sorted.at(-1)];
  if (worstCm === undefined || bestCm === undefined) return refused('NO_MARK', 'throws', 0, 1, 1);
  return {
    kind: 'answer',
    count: sorted.length,
    fouls: all.flatMap(meantTrials).filter((trial) => !isMarked(trial)).length,
    bestCm,
    worstCm,
    marks: all.flatMap(({ id, trials }) =>
      trials.filter(isMarked).map(({ round, markCm }) => ({ series: id, round, markCm })),
    ),
    summary: sorted.length < LEAST_FOR_SUMMARY ? null : summaryOf(sorted),
  };
}

function summaryOf(sorted: readonly number[]): MarkSummary {
  return {
    meanCm: mean(sorted),
    sdCm: standardDeviation(sorted),
    medianCm: quantileOfSorted(sorted, 0.5),
    quartilesCm: [quantileOfSorted(sorted, 0.25), quantileOfSorted(sorted, 0.75)],
  };
}
