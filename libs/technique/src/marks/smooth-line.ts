import { mean, sum } from '../numbers/moments.js';
import type { DayMark } from './theil-sen.js';

/**
 * A line to draw through marks, and only that: at each day a straight line through all points, near ones weighted most
 * (tricube over the furthest point: loess of degree 1 and span 1, evaluated directly).
 */
export function smoothLine(points: readonly DayMark[]): readonly DayMark[] {
  return points.map(({ day }) => ({ day, cm: fittedAt(points, day) }));
}

function fittedAt(points: readonly DayMark[], day: number): number {
  const furthest = Math.max(...points.map((point) => Math.abs(point.day - day)));
  if (furthest === 0) return mean(points.map(({ cm }) => cm));
  const weights = points.map((point) => (1 - (Math.abs(point.day - day) / furthest) ** 3) ** 3);
  const total = sum(weights);
  const weighted = (of: (point: DayMark) => number): number =>
    sum(points.map((point, at) => (weights[at] ?? 0) * of(point))) / total;
  const [middleDay, middleCm] = [weighted((point) => point.day), weighted((point) => point.cm)];
  const spread = weighted((point) => (point.day - middleDay) ** 2);
  const slope =
    spread === 0 ? 0 : weighted((point) => (point.day - middleDay) * (point.cm - middleCm)) / spread;
  return middleCm + slope * (day - middleDay);
}
