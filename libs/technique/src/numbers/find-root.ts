/**
 * Where a function that changes its sign between two points is zero, by halving. Slow and sure: it is called a few
 * times on cheap functions. `null` when the signs at the ends are the same.
 */
export function rootBetween(
  of: (x: number) => number,
  from: number,
  to: number,
  within = 1e-12,
): number | null {
  let [low, high] = [from, to];
  const atLow = of(low);
  if (atLow === 0) return low;
  if (of(high) === 0) return high;
  if (atLow > 0 === of(high) > 0) return null;
  while (high - low > within * Math.max(1, Math.abs(low), Math.abs(high))) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (of(middle) > 0 === atLow > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
