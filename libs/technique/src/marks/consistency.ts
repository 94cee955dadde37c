import { refused, type Answer, type Interval, type Refusal } from '../answer.js';
import { chiSquareQuantile } from '../numbers/distributions.js';
import { squaresAround, sum } from '../numbers/moments.js';
import { implementsDiffer, marksOf, marksPerSeries, type Series } from '../series.js';

export interface Consistency {
  /** How far marks of one series lie from each other, in centimetres: progress from series to series is not in it. */
  readonly sdCm: number;
  readonly interval: Interval;
  /** The same in per cent of the mark, over logarithms. */
  readonly cvPercent: number;
  readonly cvInterval: Interval;
  readonly freedom: number;
  readonly series: number;
}

const LEAST_FREEDOM = 8;

/** Spread within series, pooled: s = √(Σ Σ (x − x̄ⱼ)² / Σ (nⱼ − 1)), with its chi-square interval. */
export function consistency(all: readonly Series[], level = 0.95): Answer<Consistency> {
  const differ = implementsDiffer(all);
  if (differ) return differ;
  const marks = all.map(marksOf).filter((series) => series.length > 1);
  const freedom = sum(marks.map((series) => series.length - 1));
  if (freedom < LEAST_FREEDOM) return tooFew(freedom, all);
  const sdCm = pooledSd(marks, freedom);
  const logs = marks.map((series) => series.map(Math.log));
  const toPercent = (sdOfLogs: number): number => 100 * Math.sqrt(Math.exp(sdOfLogs ** 2) - 1);
  const ends = sdInterval(pooledSd(logs, freedom), freedom, level);
  return {
    kind: 'answer',
    sdCm,
    interval: sdInterval(sdCm, freedom, level),
    cvPercent: toPercent(pooledSd(logs, freedom)),
    cvInterval: { low: toPercent(ends.low), high: toPercent(ends.high), level },
    freedom,
    series: marks.length,
  };
}

/** Each further throw of a series adds one degree of freedom; its first adds none. */
function tooFew(freedom: number, all: readonly Series[]): Refusal {
  const missing = LEAST_FREEDOM - freedom;
  const size = Math.max(2, marksPerSeries(all) || 6);
  const throws = Math.ceil((missing * size) / (size - 1));
  return refused('LT_FREEDOM', 'degrees of freedom', freedom, LEAST_FREEDOM, throws);
}

export function pooledSd(groups: readonly (readonly number[])[], freedom: number): number {
  return Math.sqrt(sum(groups.map((group) => squaresAround(group))) / freedom);
}

function sdInterval(sd: number, freedom: number, level: number): Interval {
  const at = (p: number): number => sd * Math.sqrt(freedom / chiSquareQuantile(p, freedom));
  return { low: at((1 + level) / 2), high: at((1 - level) / 2), level };
}
