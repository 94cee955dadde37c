import { refused, type Answer, type Interval } from '../answer.js';
import { tQuantile } from '../numbers/distributions.js';
import { mean, standardDeviation } from '../numbers/moments.js';
import { median } from '../numbers/quantiles.js';
import { signedRank } from '../numbers/rank-tests.js';
import { marksOf, type Series, type Trial } from '../series.js';

/** A throw in practice; its mark is often paced or guessed. */
export interface PracticeTrial extends Trial {
  readonly measured: boolean;
}

export interface Transfer {
  /** Competition over practice, as a ratio of medians: 0.98 is two per cent less in competition. */
  readonly ratio: number;
  readonly interval: Interval;
  /** For no difference, by signed ranks: it does not mind one odd day. */
  readonly p: number;
  readonly pairs: readonly TransferPair[];
  /** Some practice marks were estimated, not measured. */
  readonly estimatedMarks: boolean;
}

export interface TransferPair {
  readonly competition: string;
  readonly competitionCm: number;
  readonly practiceCm: number;
}

const LEAST_PAIRS = 4;
/** Practice further back than two weeks says little of the day. */
const DAYS_BEFORE = 14;

/**
 * The median of each competition against that of the practice throws with the same implement in the fourteen days
 * before, over logarithms, with a t-interval. Effort and circle differ between the two.
 */
export function practiceToCompetition(
  competitions: readonly Series[],
  practices: readonly Series<PracticeTrial>[],
  level = 0.95,
): Answer<Transfer> {
  const used = new Set<PracticeTrial>();
  const pairs = competitions.flatMap((competition): TransferPair[] => {
    const before = practices.filter(({ implement, day }) => {
      const ago = competition.day - day;
      return implement === competition.implement && ago > 0 && ago <= DAYS_BEFORE;
    });
    const [there, here] = [marksOf(competition), before.flatMap(marksOf)];
    if (there.length === 0 || here.length === 0) return [];
    before.flatMap(({ trials }) => trials).forEach((trial) => used.add(trial));
    return [{ competition: competition.id, competitionCm: median(there), practiceCm: median(here) }];
  });
  if (pairs.length < LEAST_PAIRS) return refused('LT_PAIRS', 'pairs', pairs.length, LEAST_PAIRS);
  const estimatedMarks = [...used].some(({ measured, markCm }) => markCm !== null && !measured);
  const logs = (of: keyof Omit<TransferPair, 'competition'>): number[] =>
    pairs.map((pair) => Math.log(pair[of]));
  const { p } = signedRank(logs('competitionCm'), logs('practiceCm'));
  return { kind: 'answer', ...ratioOf(pairs, level), p, pairs, estimatedMarks };
}

/** exp of the mean of ln competition − ln practice. */
export function ratioOf(
  pairs: readonly Pick<TransferPair, 'competitionCm' | 'practiceCm'>[],
  level: number,
): Pick<Transfer, 'ratio' | 'interval'> {
  const logs = pairs.map(({ competitionCm, practiceCm }) => Math.log(competitionCm / practiceCm));
  const [middle, error] = [mean(logs), standardDeviation(logs) / Math.sqrt(logs.length)];
  const half = tQuantile((1 + level) / 2, logs.length - 1) * error;
  return {
    ratio: Math.exp(middle),
    interval: { low: Math.exp(middle - half), high: Math.exp(middle + half), level },
  };
}
