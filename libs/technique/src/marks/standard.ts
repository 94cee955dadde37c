import { refused, seriesMissing, type Answer } from '../answer.js';
import { zOf } from '../numbers/distributions.js';
import { mean, standardDeviation, sum } from '../numbers/moments.js';
import { analyseVariance } from '../numbers/variance-analysis.js';
import {
  hasMark,
  implementsDiffer,
  isMarked,
  marksOf,
  marksPerSeries,
  meantTrials,
  type Series,
} from '../series.js';
import { chanceOfBest, expectedBest, type ThrowModel } from './best-of-trials.js';
import { levelOnDay, trends, type LevelOnDay } from './trend.js';

export interface StandardOutlook {
  readonly standardCm: number;
  /** With how sure the level is taken in. */
  readonly chance: number;
  /** At the low and the high end of where the level may be. */
  readonly low: number;
  readonly high: number;
  readonly level: number;
  readonly noMark: number;
  readonly expectedBestCm: number;
  readonly model: ThrowModel;
  /** Whether the level follows a trend; with fewer than five competitions it is their mean. */
  readonly followsTrend: boolean;
}

export interface StandardQuestion {
  readonly standardCm: number;
  /** Of the competition, on the same count of days as the series. */
  readonly day: number;
  readonly trials: number;
  /** Of the range. */
  readonly level?: number;
}

const LEAST_COMPETITIONS = 3;

/**
 * How likely the best of one competition is to reach a mark, from competitions with one implement. Refused for fewer
 * than three, and for a mark more than three standard deviations beyond the best: outside what the data can tell.
 */
export function chanceOfStandard(
  all: readonly Series[],
  question: StandardQuestion,
): Answer<StandardOutlook> {
  const differ = implementsDiffer(all);
  if (differ) return differ;
  const marked = all.filter(hasMark);
  if (marked.length < LEAST_COMPETITIONS) {
    return seriesMissing('LT_COMPETITIONS', marked.length, LEAST_COMPETITIONS, marksPerSeries(all));
  }
  const marks = marked.flatMap(marksOf);
  const { standardCm, day, trials, level = 0.9 } = question;
  const furthest = Math.max(...marks) + 3 * (standardDeviation(marks) || 0);
  if (standardCm > furthest) {
    return refused('OUTSIDE_THE_DATA', 'centimetres', Math.floor(furthest), standardCm);
  }
  const { at, followsTrend } = levelsOf(marked);
  const model = modelOf(marked, all, at, day, trials);
  if (model === null) return seriesMissing('LT_FREEDOM', 0, 1, 2);
  const { errorCm } = at(day);
  const shifted = (by: number): number => chanceOfBest({ ...model, meanCm: model.meanCm + by }, standardCm);
  const half = zOf(level) * errorCm;
  const { bestCm, noMark } = expectedBest(model);
  return {
    kind: 'answer',
    standardCm,
    chance: chanceOfBest({ ...model, daySdCm: Math.hypot(model.daySdCm, errorCm) }, standardCm),
    low: shifted(-half),
    high: shifted(half),
    level,
    noMark,
    expectedBestCm: bestCm,
    model,
    followsTrend,
  };
}

interface Levels {
  readonly at: (day: number) => LevelOnDay;
  readonly followsTrend: boolean;
}

function levelsOf(marked: readonly Series[]): Levels {
  const trend = trends(marked)[0];
  if (trend?.line.kind === 'answer') {
    const { line, medians } = trend;
    return { at: (day) => levelOnDay(medians, line, day), followsTrend: true };
  }
  const middles = marked.map((series) => mean(marksOf(series)));
  const flat = { cm: mean(middles), errorCm: standardDeviation(middles) / Math.sqrt(middles.length) };
  return { at: () => flat, followsTrend: false };
}

/** Spread of throws and of days around the level, by analysis of variance. */
function modelOf(
  marked: readonly Series[],
  all: readonly Series[],
  at: Levels['at'],
  day: number,
  trials: number,
): ThrowModel | null {
  const around = marked.map((series) => marksOf(series).map((cm) => cm - at(series.day).cm));
  const analysis = analyseVariance(around);
  if (analysis === null || analysis.meanSquareWithin === 0) return null;
  const { meanSquareBetween, meanSquareWithin, typicalSize } = analysis;
  const meant = all.flatMap(meantTrials);
  const fouls = sum(meant.map((trial) => (isMarked(trial) ? 0 : 1)));
  return {
    meanCm: at(day).cm,
    throwSdCm: Math.sqrt(meanSquareWithin),
    daySdCm: Math.sqrt(Math.max(0, (meanSquareBetween - meanSquareWithin) / typicalSize)),
    // Half a foul and half a mark more than there were (Jeffreys), so that none so far is not never.
    foulRate: (fouls + 0.5) / (meant.length + 1),
    trials,
  };
}
