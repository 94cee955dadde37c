import {
  bestAndMedian,
  chanceOf,
  consistency,
  foulRate,
  lastAttempt,
  markDistribution,
  median,
  openingTrial,
  roundEffect,
  seedOf,
  trends,
  type AssessedSeries,
} from '#technique';
import { flat, intervalOf, type Grounds, type OpenInterval } from './answers.js';
import { byImplement, idsOf, measured, occasionOf, plainSeries, type OneImplement } from './series-of.js';
import { ANALYSIS_VERSION, dateOf, dayOf, type AnalysisTask, type KnownThrow } from './task.js';

export interface ProgressPoint {
  readonly onDate: string;
  readonly occasion: string;
  readonly inCompetition: boolean;
  readonly bestCm: number;
  readonly medianCm: number;
  readonly count: number;
}

export interface ImplementFindings {
  readonly implement: string;
  readonly implementGrams: number | null;
  readonly variant: KnownThrow['variant'];
  readonly throws: number;
  readonly best: { readonly cm: number; readonly attempt: string; readonly onDate: string } | null;
  readonly bestInCompetition: ImplementFindings['best'];
  readonly progress: readonly ProgressPoint[];
  readonly marks: Grounds & {
    readonly count: number | null;
    readonly fouls: number | null;
    readonly meanCm: number | null;
    readonly sdCm: number | null;
    readonly medianCm: number | null;
    readonly lowerQuartileCm: number | null;
    readonly upperQuartileCm: number | null;
  };
  readonly trend: Grounds & {
    readonly cmPer30Days: number | null;
    readonly interval: OpenInterval | null;
    readonly p: number | null;
    readonly points: number | null;
  };
  readonly consistency: Grounds & {
    readonly sdCm: number | null;
    readonly cvPercent: number | null;
    readonly interval: OpenInterval | null;
  };
  readonly foulRate: Grounds & {
    readonly k: number | null;
    readonly n: number | null;
    readonly share: number | null;
    readonly interval: OpenInterval | null;
  };
  readonly rounds: Grounds & {
    readonly cmPerRound: number | null;
    readonly p: number | null;
    readonly means: readonly {
      readonly round: number;
      readonly aboveSeriesMeanCm: number;
      readonly p: number;
    }[];
  };
  readonly lastAttempt: Grounds & {
    readonly meanCm: number | null;
    readonly p: number | null;
    readonly n: number | null;
  };
  readonly openingTrial: Grounds & {
    readonly k: number | null;
    readonly n: number | null;
    readonly share: number | null;
    readonly interval: OpenInterval | null;
  };
  /** The newest series lies far below the ones before: a reason to ask how the athlete feels, and no finding. */
  readonly suddenDrop: boolean;
}

export function implementFindings(task: AnalysisTask): readonly ImplementFindings[] {
  return byImplement(task.throws).map((group) => findingsOf(group, task));
}

function findingsOf(group: OneImplement, task: AnalysisTask): ImplementFindings {
  const { throws } = group;
  const inMeets = throws.filter(({ thrownIn }) => thrownIn === 'competition');
  const meetSeries = plainSeries(inMeets, task, 'fouls');
  const all = plainSeries(measured(throws), task, 'prevalence');
  const progress = progressOf(all, throws);
  return {
    ...{ implement: group.implement, implementGrams: group.implementGrams, variant: group.variant },
    throws: throws.length,
    best: bestOf(throws),
    bestInCompetition: bestOf(inMeets),
    progress,
    suddenDrop: hasDropped(progress),
    ...levelsOf(throws, inMeets, meetSeries, task),
    ...trialsOf(group, inMeets, meetSeries, task),
  };
}

function bestOf(throws: readonly KnownThrow[]): ImplementFindings['best'] {
  const best = measured(throws).reduce<ReturnType<typeof measured>[number] | null>(
    (most, one) => (most === null || one.markCm > most.markCm ? one : most),
    null,
  );
  return best && { cm: best.markCm, attempt: best.id, onDate: best.onDate };
}

function progressOf(all: readonly AssessedSeries[], throws: readonly KnownThrow[]): readonly ProgressPoint[] {
  const inMeets = new Set(throws.filter((one) => one.thrownIn === 'competition').map((one) => one.occasion));
  const rows = bestAndMedian(all);
  if ('kind' in rows) return [];
  return rows
    .map(({ series, day, bestCm, medianCm, count }) => {
      const occasion = occasionOf({ id: series });
      return { onDate: dateOf(day), occasion, inCompetition: inMeets.has(occasion), bestCm, medianCm, count };
    })
    .sort((a, b) => (a.onDate < b.onDate ? -1 : a.onDate > b.onDate ? 1 : 0));
}

const LEAST_BEFORE = 5;
/** A choice of ours: a twelfth below the middle of the last series, and three times their spread. */
const DROP_SHARE = 1 / 12;

function hasDropped(progress: readonly ProgressPoint[]): boolean {
  const last = progress.at(-1);
  const before = progress.slice(-1 - 2 * LEAST_BEFORE, -1).map(({ medianCm }) => medianCm);
  if (!last || before.length < LEAST_BEFORE) return false;
  const middle = median(before);
  const spread = 1.4826 * median(before.map((cm) => Math.abs(cm - middle)));
  return last.medianCm < Math.min(middle * (1 - DROP_SHARE), middle - 3 * spread);
}

const NO_MARKS = {
  ...{ count: null, fouls: null, meanCm: null, sdCm: null },
  ...{ medianCm: null, lowerQuartileCm: null, upperQuartileCm: null },
};
const NO_SHARE = { k: null, n: null, share: null, interval: null };

function levelsOf(
  throws: readonly KnownThrow[],
  inMeets: readonly KnownThrow[],
  meetSeries: readonly AssessedSeries[],
  task: AnalysisTask,
): Pick<ImplementFindings, 'marks' | 'trend' | 'consistency'> {
  const distance = plainSeries(throws, task, 'distance');
  const trend = trends(meetSeries)[0]?.line ?? theNoTrend(meetSeries);
  return {
    marks: flat(markDistribution(distance), idsOf(throws), NO_MARKS, ({ count, fouls, summary }) => ({
      ...{ count, fouls, meanCm: summary?.meanCm ?? null, sdCm: summary?.sdCm ?? null },
      medianCm: summary?.medianCm ?? null,
      lowerQuartileCm: summary?.quartilesCm[0] ?? null,
      upperQuartileCm: summary?.quartilesCm[1] ?? null,
    })),
    trend: flat(
      trend,
      idsOf(inMeets),
      { cmPer30Days: null, interval: null, p: null, points: null },
      ({ slopeCmPerDay, interval, p, points }) => ({
        ...{ cmPer30Days: 30 * slopeCmPerDay, p, points },
        interval: intervalOf({ ...interval, low: 30 * interval.low, high: 30 * interval.high }),
      }),
    ),
    consistency: flat(
      consistency(distance),
      idsOf(throws),
      { sdCm: null, cvPercent: null, interval: null },
      ({ sdCm, cvPercent, cvInterval }) => ({ sdCm, cvPercent, interval: intervalOf(cvInterval) }),
    ),
  };
}

function theNoTrend(meetSeries: readonly AssessedSeries[]) {
  const { length: have } = meetSeries;
  const code = 'LT_COMPETITIONS' as const;
  return {
    kind: 'refused',
    code,
    have,
    need: LEAST_BEFORE,
    of: 'competitions',
    missingThrows: null,
  } as const;
}

function trialsOf(
  { implement, throws }: OneImplement,
  inMeets: readonly KnownThrow[],
  meetSeries: readonly AssessedSeries[],
  task: AnalysisTask,
): Pick<ImplementFindings, 'foulRate' | 'rounds' | 'lastAttempt' | 'openingTrial'> {
  const chance = chanceOf(seedOf(...task.seed, ANALYSIS_VERSION, implement, 'rounds'));
  const rounds = roundEffect(meetSeries, { chance, draws: Math.min(task.draws, 2_000) });
  return {
    foulRate: flat(
      foulRate(plainSeries(throws, task, 'fouls')),
      idsOf(throws),
      NO_SHARE,
      ({ k, n, rate, interval }) => ({ k, n, share: rate, interval: intervalOf(interval) }),
    ),
    rounds: flat(
      rounds,
      idsOf(inMeets),
      { cmPerRound: null, p: null, means: [] },
      ({ rounds: means, slope }) => ({
        ...{ cmPerRound: slope.beta, p: slope.p },
        means: means.map(({ round, aboveSeriesMeanCm, p }) => ({ round, aboveSeriesMeanCm, p })),
      }),
    ),
    lastAttempt: flat(
      lastAttempt(meetSeries),
      idsOf(inMeets),
      { meanCm: null, p: null, n: null },
      ({ mean, p, count }) => ({ meanCm: mean, p, n: count }),
    ),
    openingTrial: flat(
      openingTrial(meetSeries),
      idsOf(inMeets.filter(({ round }) => round === 1)),
      NO_SHARE,
      ({ valid, series, interval }) => ({
        ...{ k: valid, n: series, share: valid / series, interval: intervalOf(interval) },
      }),
    ),
  };
}

export function weekStart(onDate: string): string {
  const day = dayOf(onDate);
  // 1970-01-01 was a Thursday.
  return dateOf(day - ((day + 3) % 7));
}
