import type { VerticalSeries } from './vertical-card.js';

/** A competitor is out after three consecutive failures, whatever the heights (WA TR26.2, read in an older text). */
export const FAILURES_ALLOWED = 3;

/** What the trials of one competitor amount to, by the heights alone (no jump-off). */
export interface VerticalStanding {
  /** Index of the greatest height cleared; `null` when none was. */
  readonly best: number | null;
  /** Failures at that height; 0 when none was cleared. */
  readonly failuresAtBest: number;
  /** Failures up to and including that height; those above it never count. 0 when none was cleared. */
  readonly failuresToBest: number;
  /** Failures since the last clearance; a pass does not break the run. */
  readonly consecutiveFailures: number;
  /** Why no further trial follows; `null` when one may. */
  readonly ended: 'three failures' | 'retired' | null;
}

export function verticalStanding(series: VerticalSeries): VerticalStanding {
  let best: number | null = null;
  let [failuresAtBest, failuresToBest, failuresSoFar, consecutiveFailures] = [0, 0, 0, 0];
  let retired = false;
  for (const [index, trials] of series.entries()) {
    const failuresHere = trials?.filter((trial) => trial === 'failed').length ?? 0;
    failuresSoFar += failuresHere;
    consecutiveFailures += failuresHere;
    retired ||= trials?.includes('retired') ?? false;
    if (!trials?.includes('cleared')) continue;
    best = index;
    failuresAtBest = failuresHere;
    failuresToBest = failuresSoFar;
    consecutiveFailures = 0;
  }
  const ended = retired ? 'retired' : consecutiveFailures >= FAILURES_ALLOWED ? 'three failures' : null;
  return { best, failuresAtBest, failuresToBest, consecutiveFailures, ended };
}
