import { type Answer } from '../answer.js';
import { zOf } from '../numbers/distributions.js';
import { median } from '../numbers/quantiles.js';
import { hasMark, marksOf, type Series } from '../series.js';
import { localLevel, type LocalLevel } from './local-level.js';
import { theilSen, type DayMark, type TheilSen } from './theil-sen.js';

/** One line per implement: a change of implement or category breaks it. */
export interface Trend {
  readonly implement: string;
  readonly bests: readonly DayMark[];
  readonly medians: readonly DayMark[];
  /** Of the medians, which do not grow with the number of trials. */
  readonly line: Answer<TheilSen>;
  readonly lineOfBests: Answer<TheilSen>;
  readonly level: Answer<LocalLevel>;
}

export function trends(all: readonly Series[], level = 0.95): readonly Trend[] {
  const marked = all.filter(hasMark).sort((a, b) => a.day - b.day);
  const implementsSeen = [...new Set(marked.map(({ implement }) => implement))];
  return implementsSeen.map((implement) => {
    const own = marked.filter((series) => series.implement === implement);
    const bests = own.map((series) => ({ day: series.day, cm: Math.max(...marksOf(series)) }));
    const medians = own.map((series) => ({ day: series.day, cm: median(marksOf(series)) }));
    return {
      implement,
      bests,
      medians,
      line: theilSen(medians, level),
      lineOfBests: theilSen(bests, level),
      level: localLevel(medians),
    };
  });
}

/** Where a line stands on a day, with an error for how sure that is. */
export interface LevelOnDay {
  readonly cm: number;
  readonly errorCm: number;
}

/**
 * The trend on a day, past or soon: the slope through the median of what the slope leaves of the marks, which wanders
 * less than the line's own intercept. The error puts together that of the median (1.25 robust standard deviations over
 * √n) and that of the slope (from its interval), which grows with the distance from the middle of the days. In
 * simulations its 90 per cent range holds the true level in nine of ten or more.
 */
export function levelOnDay(points: readonly DayMark[], line: TheilSen, day: number): LevelOnDay {
  const middleDay = median(points.map((point) => point.day));
  const levels = points.map((point) => point.cm - line.slopeCmPerDay * (point.day - middleDay));
  const middleCm = median(levels);
  const sd = 1.4826 * median(levels.map((level) => Math.abs(level - middleCm)));
  const slopeError = (line.interval.high - line.interval.low) / (2 * zOf(line.interval.level));
  return {
    cm: middleCm + line.slopeCmPerDay * (day - middleDay),
    errorCm: Math.hypot((1.2533 * sd) / Math.sqrt(points.length), slopeError * (day - middleDay)),
  };
}
