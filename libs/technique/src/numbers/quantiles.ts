/** The nine sample quantiles of Hyndman and Fan (The American Statistician 50, 1996), by their numbers there. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** Rounding must not push a position that is a whole number across it. */
const FUZZ = 4 * Number.EPSILON;

function shiftOf(type: QuantileType, p: number): number {
  switch (type) {
    case 1:
    case 2:
    case 4:
      return 0;
    case 3:
      return -0.5;
    case 5:
      return 0.5;
    case 6:
      return p;
    case 7:
      return 1 - p;
    case 8:
      return (p + 1) / 3;
    case 9:
      return p / 4 + 3 / 8;
  }
}

/** The share of the upper neighbour, when the position lies `beyond` the lower one, the `lower`-th value. */
function shareOf(type: QuantileType, beyond: number, lower: number): number {
  if (type > 3) return beyond;
  if (beyond > 0) return 1;
  if (type === 2) return 0.5;
  return type === 3 && lower % 2 !== 0 ? 1 : 0;
}

/** Of values in any order; not a number without values. Type 7 is what spreadsheets and R show. */
export function quantile(values: readonly number[], p: number, type: QuantileType = 7): number {
  return quantileOfSorted(
    [...values].sort((a, b) => a - b),
    p,
    type,
  );
}

export function quantileOfSorted(sorted: readonly number[], p: number, type: QuantileType = 7): number {
  const count = sorted.length;
  const position = count * p + shiftOf(type, p);
  const lower = Math.floor(position + FUZZ * count);
  const rest = position - lower;
  const beyond = Math.abs(rest) < FUZZ * count ? 0 : rest;
  const at = (index: number): number => sorted[Math.min(Math.max(index, 1), count) - 1] ?? Number.NaN;
  const share = shareOf(type, beyond, lower);
  return (1 - share) * at(lower) + share * at(lower + 1);
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}
