import { seriesMissing, type Answer, type Interval } from '../answer.js';
import { zOf } from '../numbers/distributions.js';
import { kendall, kendallVariance } from '../numbers/kendall.js';
import { median, quantileOfSorted } from '../numbers/quantiles.js';
import { tieSizes } from '../numbers/rank-tests.js';

/** What a competition came to on its day. */
export interface DayMark {
  readonly day: number;
  readonly cm: number;
}

export interface TheilSen {
  readonly slopeCmPerDay: number;
  readonly interval: Interval;
  /** At day 0. */
  readonly interceptCm: number;
  /** Kendall's tau-b of mark and day. */
  readonly tau: number | null;
  readonly p: number;
  readonly points: number;
}

const LEAST_POINTS = 5;

/**
 * A line that single poor days do not bend: the median of the slopes between all pairs of different days (Theil, Sen),
 * with Sen's interval by ranks.
 */
export function theilSen(points: readonly DayMark[], level = 0.95): Answer<TheilSen> {
  const count = points.length;
  const slopes = slopesBetween(points);
  if (count < LEAST_POINTS || slopes.length === 0)
    return seriesMissing('LT_COMPETITIONS', count, LEAST_POINTS);
  const [days, marks] = [points.map(({ day }) => day), points.map(({ cm }) => cm)];
  const slopeCmPerDay = quantileOfSorted(slopes, 0.5);
  // Days that are equal make no slope; their pairs are gone from N and their ties from the variance.
  const spread = zOf(level) * Math.sqrt(kendallVariance(count, tieSizes(days), tieSizes(marks)));
  const at = (place: number): number => slopes[Math.min(Math.max(place, 0), slopes.length - 1)] ?? Number.NaN;
  const { tau, p } = kendall(days, marks);
  return {
    kind: 'answer',
    slopeCmPerDay,
    interval: {
      low: at(Math.round((slopes.length - spread) / 2) - 1),
      high: at(Math.round((slopes.length + spread) / 2)),
      level,
    },
    interceptCm: median(marks) - slopeCmPerDay * median(days),
    tau,
    p,
    points: count,
  };
}

function slopesBetween(points: readonly DayMark[]): readonly number[] {
  const slopes = points.flatMap((a, at) =>
    points.slice(at + 1).flatMap((b) => (a.day === b.day ? [] : [(b.cm - a.cm) / (b.day - a.day)])),
  );
  return slopes.sort((a, b) => a - b);
}
