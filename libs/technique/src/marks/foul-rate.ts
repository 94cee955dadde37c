import { throwsMissing, type Answer, type Interval } from '../answer.js';
import { isMarked, meantTrials, type Series } from '../series.js';
import { clusteredProportion, jeffreys, type ClusteredProportion } from './proportion.js';

export interface FoulRate extends ClusteredProportion {
  readonly rate: number;
  /** As if throws were independent; the other interval allows for how alike those of one series are. */
  readonly independent: Interval;
}

const LEAST_THROWS = 10;

/** Fouls over trials that were meant. Passes and trials not taken are no trials, fouls made on purpose are not counted. */
export function foulRate(all: readonly Series[], level = 0.95): Answer<FoulRate> {
  const fouls = all.map((series) => meantTrials(series).map((trial) => !isMarked(trial)));
  const found = clusteredProportion(fouls, level);
  if (found.n < LEAST_THROWS) return throwsMissing('LT_THROWS', found.n, LEAST_THROWS);
  return {
    kind: 'answer',
    ...found,
    rate: found.k / found.n,
    independent: jeffreys(found.k, found.n, level),
  };
}

export interface FoulsByReason {
  readonly reason: string;
  readonly count: number;
}

/** The same fouls by what they were; a foul without a reason counts as `unknown`. Commonest first. */
export function foulsByReason(reasons: readonly (string | null)[]): readonly FoulsByReason[] {
  const counts = new Map<string, number>();
  for (const reason of reasons) {
    const name = reason ?? 'unknown';
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return [...counts]
    .map(([reason, count]) => ({ reason, count }))
    .sort((a, b) => b.count - a.count || (a.reason < b.reason ? -1 : 1));
}
