import { seriesMissing, type Answer, type Interval } from '../answer.js';
import type { AssessedSeries } from './assessed.js';
import { prevalence, type Prevalence } from './prevalence.js';

/** A time in which one fault was worked on. Days count from the same day as those of the series. */
export interface FocusPeriod {
  readonly code: string;
  /** By a task, a drill, or in the full throw. */
  readonly how: 'task' | 'drill' | 'full-throw';
  readonly fromDay: number;
  /** The last day; `null` while it goes on. */
  readonly toDay: number | null;
}

/** When a change is looked for: in practice is one thing, after a break and in competition another. */
export const FOCUS_WINDOWS = ['during', 'week-after', 'after-break', 'in-competition'] as const;
export type FocusWindow = (typeof FOCUS_WINDOWS)[number];

export interface FocusChange {
  readonly window: FocusWindow;
  readonly seen: Answer<Prevalence>;
  /** Share of throws with the fault now less before; negative is fewer. */
  readonly change: Answer<{ readonly difference: number; readonly interval: Interval }>;
}

export interface FocusFollowUp {
  readonly before: Answer<Prevalence>;
  readonly windows: readonly FocusChange[];
}

const DAYS_BEFORE = 28;
const WEEK = 7;
/** Two weeks without a throw are a break; what comes in the two weeks after it is looked at. */
const BREAK = 14;

/**
 * Whether a change held: how often the fault is seen in the four weeks before, while it was worked on, in the week
 * after, after a break, and in competitions since it began.
 */
export function focusFollowUp(
  { fromDay, toDay }: FocusPeriod,
  all: readonly AssessedSeries[],
  isCompetition: (series: AssessedSeries) => boolean,
  level = 0.9,
): FocusFollowUp {
  const end = toDay ?? Number.POSITIVE_INFINITY;
  const resumed = resumedAfter(
    all.map(({ day }) => day),
    fromDay,
  );
  const inWindow: Readonly<Record<FocusWindow, (series: AssessedSeries) => boolean>> = {
    during: (series) => series.day >= fromDay && series.day <= end && !isCompetition(series),
    'week-after': ({ day }) => day > end && day <= end + WEEK,
    'after-break': ({ day }) => resumed !== null && day >= resumed && day < resumed + BREAK,
    'in-competition': (series) => series.day >= fromDay && isCompetition(series),
  };
  const before = prevalence(
    all.filter(({ day }) => day < fromDay && day >= fromDay - DAYS_BEFORE),
    level,
  );
  const windows = FOCUS_WINDOWS.map((window): FocusChange => {
    const seen = prevalence(all.filter(inWindow[window]), level);
    return { window, seen, change: changeOf(before, seen) };
  });
  return { before, windows };
}

/** The first day of throwing after two weeks or more without it, once the focus had begun. */
function resumedAfter(days: readonly number[], fromDay: number): number | null {
  const since = [...new Set(days)].filter((day) => day >= fromDay).sort((a, b) => a - b);
  return since.find((day, at) => at > 0 && day - (since[at - 1] ?? day) >= BREAK) ?? null;
}

function changeOf(before: Answer<Prevalence>, now: Answer<Prevalence>): FocusChange['change'] {
  if (before.kind === 'refused') return before;
  if (now.kind === 'refused') return now;
  if (before.interval === null) return seriesMissing('LT_SERIES', 1, 2, before.n);
  if (now.interval === null) return seriesMissing('LT_SERIES', 1, 2, now.n);
  return {
    kind: 'answer',
    difference: now.share - before.share,
    interval: differenceInterval(now.share, now.interval, before.share, before.interval),
  };
}

/** Newcombe's interval of a difference of two shares, from the intervals of each (Statistics in Medicine 17, 1998). */
export function differenceInterval(one: number, oneIn: Interval, other: number, otherIn: Interval): Interval {
  const difference = one - other;
  return {
    low: difference - Math.hypot(one - oneIn.low, otherIn.high - other),
    high: difference + Math.hypot(oneIn.high - one, other - otherIn.low),
    level: oneIn.level,
  };
}
