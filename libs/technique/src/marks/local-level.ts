import { seriesMissing, type Answer } from '../answer.js';
import { variance } from '../numbers/moments.js';
import { minimise } from '../numbers/minimise.js';
import type { DayMark } from './theil-sen.js';

export interface LevelState {
  /** The level after the last day, and how sure it is. */
  readonly level: number;
  readonly variance: number;
  readonly logLikelihood: number;
  /** The level after each day with what was known by then. */
  readonly path: readonly { readonly day: number; readonly level: number; readonly variance: number }[];
}

/**
 * The Kalman filter of a level that wanders: y = μ + ε, and μ moves with variance `perDay` a day. It starts from the
 * first mark with no opinion of its own (diffuse), so the likelihood is that of the marks after the first.
 */
export function filterLevel(points: readonly DayMark[], noise: number, perDay: number): LevelState {
  const [first, ...rest] = points;
  let [level, spread, logLikelihood] = [first?.cm ?? Number.NaN, noise, 0];
  let day = first?.day ?? Number.NaN;
  const path = [{ day, level, variance: spread }];
  for (const point of rest) {
    const before = spread + perDay * (point.day - day);
    const total = before + noise;
    const surprise = point.cm - level;
    logLikelihood -= 0.5 * (Math.log(2 * Math.PI * total) + surprise ** 2 / total);
    level += (before / total) * surprise;
    spread = (before * noise) / total;
    day = point.day;
    path.push({ day, level, variance: spread });
  }
  return { level, variance: spread, logLikelihood, path };
}

export interface LocalLevel extends LevelState {
  /** Variances of a mark around its level, and of the level from one day to the next, by maximum likelihood. */
  readonly noise: number;
  readonly perDay: number;
}

const LEAST_POINTS = 8;

/** For eight competitions or more. Days must not fall. */
export function localLevel(points: readonly DayMark[]): Answer<LocalLevel> {
  if (points.length < LEAST_POINTS) return seriesMissing('LT_COMPETITIONS', points.length, LEAST_POINTS);
  const spread = Math.max(variance(points.map(({ cm }) => cm)), 1e-6);
  const days = Math.max(1, ((points.at(-1)?.day ?? 0) - (points[0]?.day ?? 0)) / (points.length - 1));
  // Square roots as unknowns: a variance of nothing is then a point like any other.
  const { at } = minimise(
    ([a = 0, b = 0]) => -filterLevel(points, a * a + 1e-9 * spread, b * b).logLikelihood,
    [Math.sqrt(spread / 2), Math.sqrt(spread / 10 / days)],
    Math.sqrt(spread) / 4,
  );
  const [noise, perDay] = [(at[0] ?? 0) ** 2 + 1e-9 * spread, (at[1] ?? 0) ** 2];
  return { kind: 'answer', noise, perDay, ...filterLevel(points, noise, perDay) };
}
