import { chiSquareCdf, zOf } from '../numbers/distributions.js';
import { sum } from '../numbers/moments.js';
import type { Interval } from '../answer.js';
import { conditionalTest, type ConditionalTest } from './conditional-test.js';

/** One stratum: an athlete, or a series. Throws with the fault and without, each by foul and valid. */
export interface FoulTable {
  readonly withFoul: number;
  readonly withValid: number;
  readonly withoutFoul: number;
  readonly withoutValid: number;
}

export interface MantelHaenszel {
  /** Odds of a foul with the fault over odds without; `null` where it cannot be estimated. */
  readonly oddsRatio: number | null;
  /** By the variance of Robins, Breslow and Greenland; `null` where it cannot be had. */
  readonly interval: Interval | null;
  /** Without and with a correction for continuity. */
  readonly chiSquare: number;
  readonly p: number;
  readonly chiSquareCorrected: number;
  readonly pCorrected: number;
  /** Fouls per throw more with the fault than without, and its error (Greenland and Robins). */
  readonly riskDifference: number;
  readonly riskDifferenceError: number;
  /** Given all margins; `null` where every table allows one layout only. */
  readonly exact: ConditionalTest | null;
  /** Some count is expected below five: read the exact p. */
  readonly sparse: boolean;
}

interface Cells {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly n: number;
}

/** `null` when no stratum has throws both with and without, or both fouls and valid throws. */
export function mantelHaenszel(tables: readonly FoulTable[], level = 0.95): MantelHaenszel | null {
  const cells = tables.map(cellsOf).filter(({ a, b, c, d }) => (a + b) * (c + d) > 0);
  const variance = sum(cells.map(varianceOf));
  if (cells.length === 0 || variance === 0) return null;
  const off = Math.abs(sum(cells.map(({ a, b, c, n }) => a - ((a + b) * (a + c)) / n)));
  const [chiSquare, chiSquareCorrected] = [off ** 2 / variance, Math.max(0, off - 0.5) ** 2 / variance];
  return {
    ...oddsOf(cells, level),
    chiSquare,
    chiSquareCorrected,
    p: 1 - chiSquareCdf(chiSquare, 1),
    pCorrected: 1 - chiSquareCdf(chiSquareCorrected, 1),
    ...differenceOf(cells),
    exact: conditionalTest(tables),
    sparse: cells.some(isSparse),
  };
}

function cellsOf({ withFoul: a, withValid: b, withoutFoul: c, withoutValid: d }: FoulTable): Cells {
  return { a, b, c, d, n: a + b + c + d };
}

function varianceOf({ a, b, c, d, n }: Cells): number {
  return n < 2 ? 0 : ((a + b) * (c + d) * (a + c) * (b + d)) / (n ** 2 * (n - 1));
}

function isSparse({ a, b, c, d, n }: Cells): boolean {
  return [a + b, c + d].some((row) => [a + c, b + d].some((column) => (row * column) / n < 5));
}

/** Σ(ad/N)/Σ(bc/N); none or all on one diagonal leave no number and no interval. */
function oddsOf(cells: readonly Cells[], level: number): Pick<MantelHaenszel, 'oddsRatio' | 'interval'> {
  const parts = cells.map(({ a, b, c, d, n }) => ({
    r: (a * d) / n,
    s: (b * c) / n,
    p: (a + d) / n,
    q: (b + c) / n,
  }));
  const [r, s] = [sum(parts.map((part) => part.r)), sum(parts.map((part) => part.s))];
  if (s === 0) return { oddsRatio: null, interval: null };
  if (r === 0) return { oddsRatio: 0, interval: null };
  const variance =
    sum(parts.map((part) => part.p * part.r)) / (2 * r ** 2) +
    sum(parts.map((part) => part.p * part.s + part.q * part.r)) / (2 * r * s) +
    sum(parts.map((part) => part.q * part.s)) / (2 * s ** 2);
  const half = zOf(level) * Math.sqrt(variance);
  const oddsRatio = r / s;
  return {
    oddsRatio,
    interval: { low: oddsRatio * Math.exp(-half), high: oddsRatio * Math.exp(half), level },
  };
}

function differenceOf(
  cells: readonly Cells[],
): Pick<MantelHaenszel, 'riskDifference' | 'riskDifferenceError'> {
  const weight = sum(cells.map(({ a, b, c, d, n }) => ((a + b) * (c + d)) / n));
  const difference = sum(cells.map(({ a, b, c, d, n }) => (a * (c + d) - c * (a + b)) / n));
  const variance = sum(
    cells.map(({ a, b, c, d, n }) => {
      const [exposed, others] = [a + b, c + d];
      return (a * b * others ** 3 + c * d * exposed ** 3) / (exposed * others * n ** 2);
    }),
  );
  return { riskDifference: difference / weight, riskDifferenceError: Math.sqrt(variance) / weight };
}
