import type { Answer } from '../answer.js';
import { mean } from '../numbers/moments.js';
import { assessedTrials, isPresent, PRESENT_FROM, type AssessedSeries } from './assessed.js';

/**
 * Benjamini and Hochberg's q of each p, in the order given: the share of wrong leads expected among all at least as
 * striking. For the faults answered for one question and one athlete; refused ones are no tests.
 */
export function falseDiscoveryRates(ps: readonly number[]): readonly number[] {
  const order = ps.map((_, at) => at).sort((a, b) => (ps[b] ?? 0) - (ps[a] ?? 0));
  const rates = new Array<number>(ps.length).fill(1);
  let least = 1;
  order.forEach((at, fromTop) => {
    const rank = ps.length - fromTop;
    least = Math.min(least, ((ps[at] ?? 1) * ps.length) / rank);
    rates[at] = least;
  });
  return rates;
}

export interface Screened<T> {
  readonly code: string;
  readonly answer: Answer<T>;
  /** `null` for a refusal. */
  readonly q: number | null;
  /** Worth trying out in practice; never proof. */
  readonly worthTesting: boolean;
}

export const WORTH_TESTING_Q = 0.1;

export function screened<T extends { readonly p: number }>(
  answers: readonly { readonly code: string; readonly answer: Answer<T> }[],
): readonly Screened<T>[] {
  const ps = answers.flatMap(({ answer }) => (answer.kind === 'answer' ? [answer.p] : []));
  const rates = falseDiscoveryRates(ps);
  let next = 0;
  return answers.map(({ code, answer }) => {
    const q = answer.kind === 'answer' ? (rates[next++] ?? 1) : null;
    return { code, answer, q, worthTesting: q !== null && q < WORTH_TESTING_Q };
  });
}

/** Faults that come and go together in the same series are answered for as one. */
export const TOGETHER_PHI = 0.6;

/**
 * Groups of codes whose presence is linked within series (phi > 0.6, over throws looked at for both). `seriesOf` gives
 * the same series, in the same order and with the same trials, for each code. A code alone is a group of one.
 */
export function movingTogether(
  codes: readonly string[],
  seriesOf: (code: string) => readonly AssessedSeries[],
): readonly (readonly string[])[] {
  const groups: string[][] = [];
  for (const code of codes) {
    const linked = groups.filter((group) =>
      group.some((other) => phiWithin(seriesOf(code), seriesOf(other)) > TOGETHER_PHI),
    );
    const joined = [...linked.flat(), code];
    linked.forEach((group) => groups.splice(groups.indexOf(group), 1));
    groups.push(joined);
  }
  return groups;
}

/** The correlation of two presences within series; 0 where one of them never differs. */
export function phiWithin(a: readonly AssessedSeries[], b: readonly AssessedSeries[]): number {
  let [both, one, other] = [0, 0, 0];
  a.forEach((series, at) => {
    const second = new Map((b[at] ? assessedTrials(b[at]) : []).map((trial) => [trial.round, trial]));
    const pairs = assessedTrials(series).flatMap((trial) => {
      const match = second.get(trial.round);
      return match ? [[Number(isPresent(trial, PRESENT_FROM)), Number(isPresent(match, PRESENT_FROM))]] : [];
    });
    const [middleX, middleY] = [mean(pairs.map(([x = 0]) => x)), mean(pairs.map(([, y = 0]) => y))];
    for (const [x = 0, y = 0] of pairs) {
      both += (x - middleX) * (y - middleY);
      one += (x - middleX) ** 2;
      other += (y - middleY) ** 2;
    }
  });
  return one * other === 0 ? 0 : both / Math.sqrt(one * other);
}
