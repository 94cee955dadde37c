import { refused, type Answer } from '../answer.js';
import { rootBetween } from '../numbers/find-root.js';
import { sum } from '../numbers/moments.js';

/** One athlete's effect and its standard error, on any one scale. */
export interface OwnEffect {
  readonly athlete: string;
  readonly effect: number;
  readonly error: number;
}

export interface PooledEffect extends OwnEffect {
  /** Drawn towards the squad's as far as the own one is unsure, and how sure that is. */
  readonly pooled: number;
  readonly pooledError: number;
}

export interface Pooling {
  readonly mean: number;
  readonly meanError: number;
  /** How much athletes differ, as a variance (Paule and Mandel). */
  readonly betweenVariance: number;
  /** Cochran's Q. */
  readonly q: number;
  readonly athletes: readonly PooledEffect[];
}

const LEAST_ATHLETES = 4;

/** For at least four athletes at a similar stage; show the own effect beside the pooled one. */
export function poolEffects(own: readonly OwnEffect[]): Answer<Pooling> {
  if (own.length < LEAST_ATHLETES) return refused('LT_ATHLETES', 'athletes', own.length, LEAST_ATHLETES);
  const betweenVariance = pauleMandel(own);
  const { middle, weight } = weightedMean(own, betweenVariance);
  const meanError = 1 / Math.sqrt(weight);
  return {
    kind: 'answer',
    mean: middle,
    meanError,
    betweenVariance,
    q: cochranQ(own, 0),
    athletes: own.map((one) => {
      const towards = one.error ** 2 / (one.error ** 2 + betweenVariance);
      const pooledError = Math.sqrt(towards * betweenVariance + (towards * meanError) ** 2);
      return { ...one, pooled: towards * middle + (1 - towards) * one.effect, pooledError };
    }),
  };
}

export function weightedMean(
  own: readonly OwnEffect[],
  betweenVariance: number,
): { readonly middle: number; readonly weight: number } {
  const weights = own.map(({ error }) => 1 / (error ** 2 + betweenVariance));
  const weight = sum(weights);
  return { middle: sum(own.map(({ effect }, at) => (weights[at] ?? 0) * effect)) / weight, weight };
}

export function cochranQ(own: readonly OwnEffect[], betweenVariance: number): number {
  const { middle } = weightedMean(own, betweenVariance);
  return sum(own.map(({ effect, error }) => (effect - middle) ** 2 / (error ** 2 + betweenVariance)));
}

/** The variance at which Q is what it should be, k − 1; nothing when it is not above that to begin with. */
export function pauleMandel(own: readonly OwnEffect[]): number {
  const freedom = own.length - 1;
  if (cochranQ(own, 0) <= freedom) return 0;
  let high = Math.max(...own.map(({ error }) => error ** 2));
  while (cochranQ(own, high) > freedom) high *= 2;
  return rootBetween((variance) => cochranQ(own, variance) - freedom, 0, high) ?? 0;
}

/** DerSimonian and Laird's moment estimate, to compare with. */
export function derSimonianLaird(own: readonly OwnEffect[]): number {
  const weights = own.map(({ error }) => 1 / error ** 2);
  const whole = sum(weights);
  const scale = whole - sum(weights.map((weight) => weight ** 2)) / whole;
  return Math.max(0, (cochranQ(own, 0) - (own.length - 1)) / scale);
}

/** Restricted maximum likelihood by its fixed point, to compare with. */
export function restrictedLikelihoodVariance(own: readonly OwnEffect[]): number {
  let variance = derSimonianLaird(own);
  for (let step = 0; step < 1000; step++) {
    const { middle, weight } = weightedMean(own, variance);
    const squares = own.map(({ error }) => 1 / (error ** 2 + variance) ** 2);
    const excess = own.map(
      ({ effect, error }, at) => (squares[at] ?? 0) * ((effect - middle) ** 2 - error ** 2),
    );
    const next = Math.max(0, sum(excess) / sum(squares) + 1 / weight);
    if (Math.abs(next - variance) < 1e-12) return next;
    variance = next;
  }
  return variance;
}
