/** One line of the report and of `bench.json`. */
export interface Measure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The floor's value, measured in the same run; `null`: there is none. */
  readonly against: number | null;
  /** `value / against`. */
  readonly ratio: number | null;
  /** Against a floor the smallest ratio, otherwise the largest value; `null`: only reported. */
  readonly target: number | null;
  readonly ok: boolean;
}

/** Measured against a floor: more is better. */
export function againstFloor(
  name: string,
  unit: string,
  { values, floor, target }: { values: readonly number[]; floor: readonly number[]; target: number },
): Measure {
  const [value, against] = [median(values), median(floor)];
  const ratio = value / against;
  return {
    name,
    value: round(value),
    unit,
    against: round(against),
    ratio: round(ratio),
    target,
    ok: ratio >= target,
  };
}

/** Measured by itself: less is better. */
export function absolute(
  name: string,
  unit: string,
  values: readonly number[],
  target: number | null,
): Measure {
  const value = median(values);
  return {
    name,
    value: round(value),
    unit,
    against: null,
    ratio: null,
    target,
    ok: target === null || value <= target,
  };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** To three significant digits, whole from a thousand on. */
function round(value: number): number {
  return value >= 1000 ? Math.round(value) : Number(value.toPrecision(3));
}

/** The measures as an aligned table. */
export function asTable(measures: readonly Measure[]): string {
  const head = ['name', 'value', 'unit', 'floor', 'ratio', 'target', ''];
  const rows = measures.map(({ name, value, unit, against, ratio, target, ok }) => [
    name,
    String(value),
    unit,
    against === null ? '-' : String(against),
    ratio === null ? '-' : ratio.toFixed(2),
    target === null ? '-' : ratio === null ? `≤ ${target}` : `≥ ${target}`,
    target === null ? '' : ok ? 'ok' : 'MISSED',
  ]);
  const widths = head.map((_, column) => Math.max(...[head, ...rows].map((row) => row[column]!.length)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) => cell.padEnd(widths[column]!))
      .join('  ')
      .trimEnd();
  return [head, ...rows].map(line).join('\n');
}
