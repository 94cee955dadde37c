import { isWindLegal } from '../quantities/wind.js';
import type { Series, Trial } from '../trial.js';

/** The mark that a result shows, and the one that wind lets count for records. */
export interface BestTrial {
  /** The best mark; among equal ones the first that is wind-legal, else the first. `null`: none was measured. */
  readonly shown: Trial | null;
  /** The best mark with a legal wind; where the event has no wind, the best mark. */
  readonly legal: Trial | null;
}

/** @param windLimit in tenths of m/s; `null`: the event has no wind (or is held indoors). */
export function bestTrialOf(series: Series, windLimit: number | null): BestTrial {
  let shown: Trial | null = null;
  let legal: Trial | null = null;
  for (const trial of series) {
    if (trial?.outcome !== 'valid') continue;
    if (isBetter(trial, shown)) shown = trial;
    if (mayCount(trial, windLimit) && isBetter(trial, legal)) legal = trial;
  }
  return { shown: legal?.mark === shown?.mark ? legal : shown, legal };
}

function isBetter(trial: Trial, than: Trial | null): boolean {
  return trial.mark! > (than?.mark ?? 0);
}

function mayCount(trial: Trial, windLimit: number | null): boolean {
  return windLimit === null || isWindLegal(trial.wind ?? 'NWI', windLimit) === true;
}
