import { refused, type Answer } from '../answer.js';
import { mean, sum } from '../numbers/moments.js';
import { implementsDiffer, isMarked, meantTrials, marksOf, type Series } from '../series.js';

export interface SignFlip {
  readonly mean: number;
  /** Exact, two-sided, over all 2^m ways to turn signs. */
  readonly p: number;
  readonly count: number;
}

/** A million ways to turn signs; beyond, an exact count would take too long. */
const MOST_FLIPPED = 20;

/** Whether differences lie to one side of zero, by turning their signs. `null` beyond twenty: draw instead. */
export function signFlip(differences: readonly number[]): SignFlip | null {
  const count = differences.length;
  if (count === 0 || count > MOST_FLIPPED) return null;
  const observed = Math.abs(sum(differences));
  const near = 1e-9 * Math.max(...differences.map(Math.abs), 1e-300);
  const signed = [...differences];
  let [total, asLarge] = [sum(differences), 0];
  // Gray code: each step turns one sign only.
  for (let step = 1; step <= 2 ** count; step++) {
    if (Math.abs(total) >= observed - near) asLarge++;
    const turned = Math.min(31 - Math.clz32(step & -step), count - 1);
    total -= 2 * (signed[turned] as number);
    signed[turned] = -(signed[turned] as number);
  }
  return { mean: mean(differences), p: asLarge / 2 ** count, count };
}

export interface LastAttempt extends SignFlip {
  /** The last trial's mark against the mean of the series' earlier marks, by series. */
  readonly differencesCm: readonly { readonly series: string; readonly cm: number }[];
  /** Fouls among last trials, against those before. */
  readonly lastFouls: { readonly fouls: number; readonly trials: number };
  readonly earlierFouls: { readonly fouls: number; readonly trials: number };
}

const LEAST_SERIES = 6;

/**
 * What the last trial of a series was worth against the ones before it. With fewer than six series no p could fall
 * under 0.05. Do not pick the series in which the athlete lay behind: they were picked for poor marks, and what
 * follows poor marks is better by that alone. The latest twenty series count.
 */
export function lastAttempt(all: readonly Series[]): Answer<LastAttempt> {
  const differ = implementsDiffer(all);
  if (differ) return differ;
  const latest = [...all].sort((a, b) => b.day - a.day);
  const differencesCm = latest.flatMap(differenceOf).slice(0, MOST_FLIPPED);
  const found = signFlip(differencesCm.map(({ cm }) => cm));
  if (found === null || found.count < LEAST_SERIES) {
    // A last trial belongs to one series, so every missing series is one more last trial.
    const have = differencesCm.length;
    return refused('LT_SERIES', 'series', have, LEAST_SERIES, LEAST_SERIES - have);
  }
  const meant = all.map(meantTrials).filter((trials) => trials.length > 1);
  return {
    kind: 'answer',
    ...found,
    differencesCm,
    lastFouls: foulsIn(meant.map((trials) => trials.slice(-1))),
    earlierFouls: foulsIn(meant.map((trials) => trials.slice(0, -1))),
  };
}

function differenceOf(series: Series): readonly { series: string; cm: number }[] {
  const last = series.trials.at(-1);
  const earlier = marksOf({ ...series, trials: series.trials.slice(0, -1) });
  if (last === undefined || !isMarked(last) || earlier.length === 0) return [];
  return [{ series: series.id, cm: last.markCm - mean(earlier) }];
}

function foulsIn(all: readonly (readonly Series['trials'][number][])[]): { fouls: number; trials: number } {
  const trials = all.flat();
  return { fouls: trials.filter((trial) => !isMarked(trial)).length, trials: trials.length };
}
