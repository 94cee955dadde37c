import { sum } from '../numbers/moments.js';

/** Counts of two observers' answers: row the one's, column the other's. */
export type AgreementTable = readonly (readonly number[])[];

export type Weighting = 'nominal' | 'linear' | 'quadratic';

export interface Kappa {
  readonly observed: number;
  readonly expected: number;
  /** `null` when both gave one and the same answer throughout: neither 0 nor 1. */
  readonly kappa: number | null;
  /** Fleiss, Cohen and Everitt. */
  readonly standardError: number | null;
  readonly count: number;
  /** One observer gave one answer throughout: kappa is then 0 whatever the other saw. */
  readonly oneIsConstant: boolean;
}

export function cohenKappa(table: AgreementTable, weighting: Weighting = 'nominal'): Kappa {
  const size = table.length;
  const count = sum(table.flat());
  const share = (i: number, j: number): number => (table[i]?.[j] ?? 0) / count;
  const places = Array.from({ length: size }, (_, at) => at);
  const rows = places.map((i) => sum(places.map((j) => share(i, j))));
  const columns = places.map((j) => sum(places.map((i) => share(i, j))));
  const weight = (i: number, j: number): number => weightOf(weighting, Math.abs(i - j), size);
  const over = (of: (i: number, j: number) => number): number =>
    sum(places.flatMap((i) => places.map((j) => of(i, j))));
  const observed = over((i, j) => weight(i, j) * share(i, j));
  const expected = over((i, j) => weight(i, j) * (rows[i] ?? 0) * (columns[j] ?? 0));
  const oneIsConstant = [rows, columns].some((margin) => margin.filter((value) => value > 0).length === 1);
  if (1 - expected < 1e-12)
    return { observed, expected, kappa: null, standardError: null, count, oneIsConstant };
  const kappa = (observed - expected) / (1 - expected);
  const rowWeight = places.map((i) => sum(places.map((j) => weight(i, j) * (columns[j] ?? 0))));
  const columnWeight = places.map((j) => sum(places.map((i) => weight(i, j) * (rows[i] ?? 0))));
  const squares = over(
    (i, j) =>
      share(i, j) * (weight(i, j) - ((rowWeight[i] ?? 0) + (columnWeight[j] ?? 0)) * (1 - kappa)) ** 2,
  );
  const variance = (squares - (kappa - expected * (1 - kappa)) ** 2) / (count * (1 - expected) ** 2);
  return { observed, expected, kappa, standardError: Math.sqrt(Math.max(0, variance)), count, oneIsConstant };
}

function weightOf(weighting: Weighting, apart: number, size: number): number {
  switch (weighting) {
    case 'nominal':
      return apart === 0 ? 1 : 0;
    case 'linear':
      return 1 - apart / (size - 1);
    case 'quadratic':
      return 1 - (apart / (size - 1)) ** 2;
  }
}

export interface PresenceAgreement {
  /** Of throws that either called present or absent, the share that both did; `null` where nobody did. */
  readonly onPresent: number | null;
  readonly onAbsent: number | null;
  /** Gwet's AC1, which stays in place when a fault is rare. */
  readonly ac1: number;
}

/** For present against absent, `[[both present, only the one], [only the other, both absent]]`. */
export function presenceAgreement(table: AgreementTable): PresenceAgreement {
  const [[a = 0, b = 0] = [], [c = 0, d = 0] = []] = table;
  const count = a + b + c + d;
  const half = (2 * a + b + c) / (2 * count);
  const expected = 2 * half * (1 - half);
  return {
    onPresent: 2 * a + b + c === 0 ? null : (2 * a) / (2 * a + b + c),
    onAbsent: 2 * d + b + c === 0 ? null : (2 * d) / (2 * d + b + c),
    ac1: ((a + d) / count - expected) / (1 - expected),
  };
}
