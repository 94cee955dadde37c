/** Sums and means. Two passes everywhere: one pass loses the digits that marks near 60 m have in common. */

export function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

/** Not a number without values. The second pass adds what the first one rounded away. */
export function mean(values: readonly number[]): number {
  const first = sum(values) / values.length;
  let rest = 0;
  for (const value of values) rest += value - first;
  return first + rest / values.length;
}

/** Σ(x − x̄)², less what rounding of the mean has put in. */
export function squaresAround(values: readonly number[], centre = mean(values)): number {
  let squares = 0;
  let rest = 0;
  for (const value of values) {
    squares += (value - centre) ** 2;
    rest += value - centre;
  }
  return values.length === 0 ? 0 : squares - rest ** 2 / values.length;
}

/** With n − 1; not a number for fewer than two values. */
export function variance(values: readonly number[]): number {
  return values.length < 2 ? Number.NaN : squaresAround(values) / (values.length - 1);
}

export function standardDeviation(values: readonly number[]): number {
  return Math.sqrt(variance(values));
}

/** How alike neighbours are: Σ(x_i − x̄)(x_{i−1} − x̄) / Σ(x_i − x̄)². */
export function lag1Autocorrelation(values: readonly number[]): number {
  const centre = mean(values);
  let products = 0;
  for (let at = 1; at < values.length; at++) {
    products += ((values[at] ?? 0) - centre) * ((values[at - 1] ?? 0) - centre);
  }
  return products / squaresAround(values, centre);
}

/** Values by a key, in the order in which the keys first appear. */
export function grouped<T>(
  items: readonly T[],
  keyOf: (item: T) => string,
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
