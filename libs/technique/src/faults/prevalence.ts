import { type Answer } from '../answer.js';
import { clusteredProportion, type ClusteredProportion } from '../marks/proportion.js';
import {
  assessedTrials,
  isPresent,
  notLookedFor,
  PRESENT_FROM,
  type AssessedSeries,
  type Severity,
} from './assessed.js';

export interface Prevalence extends ClusteredProportion {
  readonly share: number;
  /** How many throws were looked at for something else only. */
  readonly notAssessed: number;
}

/** In how many of the throws that were looked at for it a fault was present. Fouls count: they were throws. */
export function prevalence(
  all: readonly AssessedSeries[],
  level = 0.95,
  presentFrom: Severity = PRESENT_FROM,
): Answer<Prevalence> {
  const noted = all.map((series) => assessedTrials(series).map((trial) => isPresent(trial, presentFrom)));
  const found = clusteredProportion(noted, level);
  if (found.n === 0) return notLookedFor(all);
  const thrown = all.reduce(
    (total, { trials }) => total + trials.filter((t) => !t.voidedOnPurpose).length,
    0,
  );
  return { kind: 'answer', ...found, share: found.k / found.n, notAssessed: thrown - found.n };
}
