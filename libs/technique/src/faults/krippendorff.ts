import { sum } from '../numbers/moments.js';

export type Metric = 'nominal' | 'ordinal' | 'interval';

/**
 * Krippendorff's α = 1 − Dₒ/Dₑ for any number of observers, who need not all have seen every throw. `answers` has a
 * row per observer, `null` where one did not look. `null` when fewer than two values were ever given.
 */
export function krippendorffAlpha(
  answers: readonly (readonly (number | null)[])[],
  metric: Metric,
): number | null {
  const units = (answers[0] ?? []).map((_, unit) =>
    answers.map((row) => row[unit] ?? null).filter((value): value is number => value !== null),
  );
  const paired = units.filter((values) => values.length > 1);
  const values = [...new Set(paired.flat())].sort((a, b) => a - b);
  const totals = values.map((value) => paired.flat().filter((other) => other === value).length);
  const count = sum(totals);
  const apart = distances(values, totals, metric);
  const expected = sum(
    values.flatMap((_, c) => values.map((__, k) => (totals[c] ?? 0) * (totals[k] ?? 0) * apart(c, k))),
  );
  if (expected === 0) return null;
  const observed = sum(
    paired.map((unit) => {
      const places = unit.map((value) => values.indexOf(value));
      return sum(places.flatMap((c) => places.map((k) => apart(c, k)))) / (unit.length - 1);
    }),
  );
  return 1 - ((count - 1) * observed) / expected;
}

/** Squared distances of two values by their places. */
function distances(
  values: readonly number[],
  totals: readonly number[],
  metric: Metric,
): (c: number, k: number) => number {
  return (c, k) => {
    if (c === k) return 0;
    if (metric === 'nominal') return 1;
    if (metric === 'interval') return ((values[c] ?? 0) - (values[k] ?? 0)) ** 2;
    const [low, high] = [Math.min(c, k), Math.max(c, k)];
    const between = sum(totals.slice(low, high + 1));
    return (between - ((totals[low] ?? 0) + (totals[high] ?? 0)) / 2) ** 2;
  };
}
