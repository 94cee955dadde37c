import type { HeightTrials, VerticalSeries } from './vertical-card.js';
import { FAILURES_ALLOWED } from './vertical-standing.js';

/** What cannot be in a series, in order of precedence: of two faults of one cell the one named first is told. */
export type SeriesFaultCode =
  | 'GAP'
  | 'AFTER_RETIRING'
  | 'AFTER_STANDARD'
  | 'AFTER_THREE_FAILURES'
  | 'OPEN_HEIGHT';

export interface SeriesFault {
  /** Which height, as an index. */
  readonly index: number;
  readonly code: SeriesFaultCode;
}

/**
 * What could not have been in one competitor's series, at most one fault for each height, by height.
 * `standardIndex`: the first height that reaches the qualifying standard; `null` in a final or when none does.
 */
export function seriesFaults(series: VerticalSeries, standardIndex: number | null): SeriesFault[] {
  const faults: SeriesFault[] = [];
  const last = series.findLastIndex((trials) => trials !== null);
  let before: Before = { gap: false, retired: false, qualified: false, failures: 0 };
  for (const [index, trials] of series.entries()) {
    if (trials === null) {
      before = { ...before, gap: true };
      continue;
    }
    const code = faultOf(trials, before, index < last);
    if (code !== null) faults.push({ index, code });
    before = after(before, trials, standardIndex !== null && index >= standardIndex);
  }
  return faults;
}

/** What a cell has behind it. */
interface Before {
  readonly gap: boolean;
  readonly retired: boolean;
  readonly qualified: boolean;
  /** Consecutive; once they are three they stay three, for nothing may follow them. */
  readonly failures: number;
}

function faultOf(trials: HeightTrials, before: Before, followed: boolean): SeriesFaultCode | null {
  if (before.gap) return 'GAP';
  if (before.retired) return 'AFTER_RETIRING';
  if (before.qualified) return 'AFTER_STANDARD';
  const left = FAILURES_ALLOWED - before.failures;
  const failures = failuresIn(trials);
  // The third failure may end the cell; before a cell, or followed by more in it, it makes the rest impossible.
  if (left === 0 || failures > left || (failures === left && trials.length > failures)) {
    return 'AFTER_THREE_FAILURES';
  }
  return trials.at(-1) === 'failed' && failures < left && followed ? 'OPEN_HEIGHT' : null;
}

function after(before: Before, trials: HeightTrials, reachesStandard: boolean): Before {
  const failures = before.failures + failuresIn(trials);
  const isOut = failures >= FAILURES_ALLOWED;
  const cleared = trials.includes('cleared');
  return {
    gap: before.gap,
    retired: before.retired || trials.includes('retired'),
    qualified: before.qualified || (reachesStandard && cleared && !isOut),
    failures: isOut ? FAILURES_ALLOWED : cleared ? 0 : failures,
  };
}

function failuresIn(trials: HeightTrials): number {
  return trials.filter((trial) => trial === 'failed').length;
}
