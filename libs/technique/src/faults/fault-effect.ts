import {
  refused,
  seriesMissing,
  throwsMissing,
  type Answer,
  type Interval,
  type Refusal,
} from '../answer.js';
import type { Chance } from '../numbers/random.js';
import { isMarked, meantTrials, type Marked } from '../series.js';
import { arrangementsOver } from '../within-series/arrangements.js';
import { isInformative, type Block } from '../within-series/block.js';
import { resampledInterval } from '../within-series/cluster-bootstrap.js';
import { fixedEffect, FULL_DRAWS, withinSeriesTest } from '../within-series/within-series-test.js';
import {
  assessedTrials,
  isPresent,
  notLookedFor,
  PRESENT_FROM,
  type Assessed,
  type AssessedSeries,
  type Severity,
} from './assessed.js';

/** What must be there before an effect is shown. */
export const EFFECT_NEEDS = {
  informativeSeries: 3,
  throwsPerState: 5,
  arrangements: 100,
  coverage: 0.8,
  kappa: 0.4,
  doubleLogged: 30,
} as const;

/** `covariate`: the round is taken out within series; `thirds`: notes are compared within thirds of the rounds only. */
export type RoundAdjustment = 'none' | 'covariate' | 'thirds';

export interface EffectOptions {
  /** Seeded by athlete, event, version of the analysis and version of the data. */
  readonly chance: Chance;
  readonly level?: number;
  readonly draws?: number;
  readonly presentFrom?: Severity;
  /** Per step of severity instead of present against absent: a second line only. */
  readonly asDose?: boolean;
  readonly round?: RoundAdjustment;
  /** What two observers of the same throws agreed on, where there are enough. */
  readonly agreement?: { readonly kappa: number; readonly throws: number };
  /** Stages as numbers: the fault's first one and the athlete's. */
  readonly stages?: { readonly relevantFrom: number; readonly athlete: number };
}

/** A within-series difference on log marks. It says what goes with the fault, not what the fault does. */
export interface FaultEffect {
  /** Marks with the fault against marks without, in per cent: 100 (e^β − 1). */
  readonly percent: number;
  readonly interval: Interval;
  readonly p: number;
  /** On log marks, with the least-squares error: what pooling over athletes takes. */
  readonly beta: number;
  readonly standardError: number;
  readonly exact: boolean;
  readonly draws: number;
  readonly arrangements: number;
  readonly informativeSeries: number;
  readonly series: number;
  readonly throwsWith: number;
  readonly throwsWithout: number;
  /** By drawing whole series, in per cent; `null` below fifteen informative series, and for an adjusted line. */
  readonly resampled: Interval | null;
  /** The interval holds no effect at all. */
  readonly notYetKnown: boolean;
}

/**
 * How marks with a fault differ from marks without within the same series, or why that cannot be said yet and how many
 * throws are missing. Fouls are answered elsewhere; throws that nobody looked at for it stay out.
 */
export function faultEffect(all: readonly AssessedSeries[], options: EffectOptions): Answer<FaultEffect> {
  const early = refusalBefore(all, options);
  if (early) return early;
  const rows = all.map(markedRows);
  const blocks = rows.flatMap((row) => blocksOf(row, options)).filter(({ x }) => x.length > 1);
  const counts = countsOf(rows, options);
  const late = refusalOf(counts, blocks, rows);
  if (late) return late;
  const { level = 0.9, draws = FULL_DRAWS, chance } = options;
  const found = withinSeriesTest(blocks, { level, draws, chance });
  const squares = fixedEffect(blocks);
  if (found === null || squares === null) return seriesMissing('NOT_ESTIMABLE', 0, 1);
  const interval = inPercent(found.interval);
  const resampled = options.round === 'covariate' ? null : resampledInterval(blocks, level, chance);
  return {
    kind: 'answer',
    percent: percent(found.beta),
    interval,
    p: found.p,
    beta: found.beta,
    standardError: squares.standardError,
    exact: found.exact,
    draws: found.draws,
    arrangements: found.arrangements,
    series: rows.filter((row) => row.length > 0).length,
    ...counts,
    resampled: resampled && inPercent(resampled),
    notYetKnown: interval.low <= 0 && interval.high >= 0,
  };
}

function percent(logEffect: number): number {
  return 100 * Math.expm1(logEffect);
}

function inPercent({ low, high, level }: Interval): Interval {
  return { low: percent(low), high: percent(high), level };
}

type Row = Marked<Assessed>;

function markedRows(series: AssessedSeries): readonly Row[] {
  return assessedTrials(series).filter(isMarked);
}

function valueOf(row: Row, { asDose = false, presentFrom = PRESENT_FROM }: EffectOptions): number {
  if (asDose) return row.severity;
  return isPresent(row, presentFrom) ? 1 : 0;
}

/** A series as one block, or as three when only throws of the same third of the rounds are to be compared. */
function blocksOf(rows: readonly Row[], options: EffectOptions): readonly Block[] {
  const { round = 'none' } = options;
  const block = (some: readonly Row[]): Block => ({
    x: some.map((row) => valueOf(row, options)),
    y: some.map((row) => Math.log(row.markCm)),
    ...(round === 'covariate' ? { z: some.map((row) => row.round) } : {}),
  });
  if (round !== 'thirds') return [block(rows)];
  const last = Math.max(...rows.map((row) => row.round));
  const third = (row: Row): number => Math.min(2, Math.floor((3 * (row.round - 1)) / last));
  return [0, 1, 2].map((which) => block(rows.filter((row) => third(row) === which)));
}

interface Counts {
  readonly informativeSeries: number;
  readonly throwsWith: number;
  readonly throwsWithout: number;
}

/** Only series with both states tell anything, so only their throws are counted. */
function countsOf(rows: readonly (readonly Row[])[], options: EffectOptions): Counts {
  const states = rows
    .map((row) => row.map((one) => valueOf(one, options)))
    .filter((x) => isInformative({ x }));
  const all = states.flat();
  const throwsWith = all.filter((state) => state > 0).length;
  return { informativeSeries: states.length, throwsWith, throwsWithout: all.length - throwsWith };
}

function refusalBefore(all: readonly AssessedSeries[], { stages, agreement }: EffectOptions): Refusal | null {
  if (stages && stages.athlete < stages.relevantFrom) {
    return refused('STAGE_NOT_REACHED', 'stages', stages.athlete, stages.relevantFrom);
  }
  const looked = all.filter((series) => assessedTrials(series).length > 0);
  if (looked.length === 0) return notLookedFor(all);
  const thrown = looked.reduce((total, series) => total + meantTrials(series).length, 0);
  const assessed = looked.reduce((total, series) => total + assessedTrials(series).length, 0);
  const needed = Math.ceil(EFFECT_NEEDS.coverage * thrown - 1e-9);
  if (assessed < needed) return throwsMissing('SCOPE_COVERAGE', assessed, needed);
  if (agreement && agreement.throws >= EFFECT_NEEDS.doubleLogged && agreement.kappa < EFFECT_NEEDS.kappa) {
    const hundredths = (kappa: number): number => Math.round(100 * kappa);
    return refused(
      'OBSERVER_UNRELIABLE',
      'hundredths of kappa',
      hundredths(agreement.kappa),
      hundredths(EFFECT_NEEDS.kappa),
    );
  }
  return null;
}

function refusalOf(
  { informativeSeries, throwsWith, throwsWithout }: Counts,
  blocks: readonly Block[],
  rows: readonly (readonly Row[])[],
): Refusal | null {
  const sizes = rows.filter((row) => row.length > 0).map((row) => row.length);
  const perSeries = sizes.reduce((total, size) => total + size, 0) / sizes.length;
  if (informativeSeries < EFFECT_NEEDS.informativeSeries) {
    return seriesMissing(
      'LT_INFORMATIVE_SERIES',
      informativeSeries,
      EFFECT_NEEDS.informativeSeries,
      perSeries,
    );
  }
  const fewer = Math.min(throwsWith, throwsWithout);
  if (fewer < EFFECT_NEEDS.throwsPerState) {
    return throwsMissing('LT_PER_STATE', fewer, EFFECT_NEEDS.throwsPerState);
  }
  const arrangements = arrangementsOver(blocks);
  if (arrangements < EFFECT_NEEDS.arrangements) {
    return refused(
      'K_TOO_SMALL',
      'arrangements',
      arrangements,
      EFFECT_NEEDS.arrangements,
      Math.ceil(perSeries) || 6,
    );
  }
  return null;
}
