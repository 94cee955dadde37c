import { rootBetween } from '../numbers/find-root.js';
import { sum } from '../numbers/moments.js';
import type { FoulTable } from './mantel-haenszel.js';

export interface ConditionalTest {
  /** Two-sided: everything at most as likely as what was seen. */
  readonly p: number;
  /** The conditional maximum likelihood odds ratio; `null` at the edge of what the margins allow. */
  readonly oddsRatio: number | null;
}

/** Probabilities that differ by less than this share are the same. */
const SAME = 1 + 1e-7;

/**
 * The exact test of 2 × 2 tables over strata, all margins given: fouls with the fault are a sum of hypergeometric
 * counts, so their distribution is the product of the strata's polynomials.
 */
export function conditionalTest(tables: readonly FoulTable[]): ConditionalTest | null {
  let [weights, least]: [readonly number[], number] = [[1], 0];
  for (const table of tables) {
    const own = layouts(table);
    weights = scaledToOne(product(weights, own.weights));
    least += own.least;
  }
  if (weights.length < 2) return null;
  const at = sum(tables.map(({ withFoul }) => withFoul)) - least;
  const seen = weights[at] ?? 0;
  const unlikely = weights.filter((weight) => weight <= seen * SAME);
  return { p: sum(unlikely) / sum(weights), oddsRatio: likeliestOdds(weights, at) };
}

/** How many layouts give each number of fouls with the fault, from the least that the margins allow. */
function layouts({ withFoul, withValid, withoutFoul, withoutValid }: FoulTable): {
  weights: readonly number[];
  least: number;
} {
  const [exposed, others, fouls] = [withFoul + withValid, withoutFoul + withoutValid, withFoul + withoutFoul];
  const least = Math.max(0, fouls - others);
  const most = Math.min(exposed, fouls);
  const weights = [1];
  for (let a = least; a < most; a++) {
    const ratio = ((exposed - a) * (fouls - a)) / ((a + 1) * (others - fouls + a + 1));
    weights.push((weights.at(-1) ?? 0) * ratio);
  }
  return { weights: scaledToOne(weights), least };
}

function product(a: readonly number[], b: readonly number[]): readonly number[] {
  const all = new Array<number>(a.length + b.length - 1).fill(0);
  a.forEach((one, i) => b.forEach((other, j) => (all[i + j] = (all[i + j] ?? 0) + one * other)));
  return all;
}

/** Only shares matter; this keeps them from overflowing. */
function scaledToOne(weights: readonly number[]): readonly number[] {
  const largest = Math.max(...weights);
  return weights.map((weight) => weight / largest);
}

function likeliestOdds(weights: readonly number[], at: number): number | null {
  if (at === 0 || at === weights.length - 1) return null;
  const expected = (logOdds: number): number => {
    // Tilted around the observed count, so that no power overflows before its weight is small.
    const tilted = weights.map((weight, i) => weight * Math.exp(logOdds * (i - at)));
    return sum(tilted.map((weight, i) => weight * i)) / sum(tilted);
  };
  const root = rootBetween((logOdds) => expected(logOdds) - at, -12, 12);
  return root === null ? null : Math.exp(root);
}
