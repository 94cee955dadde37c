import type { Interval } from '../answer.js';
import type { ArrangementSums } from './arrangements.js';
import { withoutCovariate, type Products } from './block.js';

/**
 * What the arrangements say of every supposed effect at once.
 *
 * With effect b supposed, b·x is taken off y, and an arrangement's sum is u − b·v, the observed one U − b·V. An
 * arrangement is at least as extreme as the observation where |u − b·v| ≥ |U − b·V|. Since |v| ≤ V, that is all b
 * between (U − u)/(V − v) and (U + u)/(V + v), a stretch around the estimate U/V. So the p of any b is the share of
 * stretches that hold it, and the ends of the interval are among the ends of the stretches, sorted: no second pass.
 */
export interface Stretches {
  /** Sorted upwards. */
  readonly from: Float64Array;
  /** Sorted upwards. */
  readonly to: Float64Array;
  /** At least as far from none as observed, to either side and to the side of the estimate. */
  readonly asExtreme: number;
  readonly asExtremeThatWay: number;
}

/** Differences below this share of what a sum could be at most are rounding. */
const ROUNDING = 1e-10;

/**
 * With a covariate z, x and y are what z leaves of them; an arrangement of x then has a size of its own, by which its
 * sum is divided.
 */
export function stretchesOf(sums: ArrangementSums, products: Products): Stretches {
  const { xx, xy, yy } = withoutCovariate(products);
  const count = sums.withY.length;
  const [from, to] = [new Float64Array(count), new Float64Array(count)];
  const [observed, size] = [xy / Math.sqrt(xx), Math.sqrt(xx)];
  const near = ROUNDING * Math.max(Math.sqrt(yy), Number.MIN_VALUE);
  const side = Math.sign(observed);
  let [asExtreme, asExtremeThatWay] = [0, 0];
  for (let at = 0; at < count; at++) {
    const [u, v] = leftBy(sums, at, products);
    if (Math.abs(u) >= Math.abs(observed) - near) asExtreme++;
    if (side * u >= side * observed - near) asExtremeThatWay++;
    const [one, other] = [endOf(observed - u, size - v, size), endOf(observed + u, size + v, size)];
    from[at] = Math.min(one.low, other.low);
    to[at] = Math.max(one.high, other.high);
  }
  return { from: from.sort(), to: to.sort(), asExtreme, asExtremeThatWay };
}

/** u and v of an arrangement: its sums with y and with x, over its own size. */
function leftBy({ withY, withX, withZ }: ArrangementSums, at: number, products: Products): [number, number] {
  const { xx, zz, zx, zy } = products;
  const [y, x] = [withY[at] as number, withX[at] as number];
  if (!withZ || zz === 0) return [y / Math.sqrt(xx), x / Math.sqrt(xx)];
  const z = withZ[at] as number;
  const size = Math.sqrt(xx - z ** 2 / zz);
  return size > ROUNDING * Math.sqrt(xx) ? [(y - (z * zy) / zz) / size, (x - (z * zx) / zz) / size] : [0, 0];
}

/** Where the arrangement is the observed one, or its mirror, every b is within. */
function endOf(difference: number, slope: number, size: number): { low: number; high: number } {
  if (slope <= ROUNDING * size) return { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  return { low: difference / slope, high: difference / slope };
}

/**
 * The share of `asMany` among the arrangements. Of drawn ones the observation itself is one more, so that no p is zero.
 */
export function shareOf(asMany: number, count: number, exact: boolean): number {
  return exact ? asMany / count : (asMany + 1) / (count + 1);
}

/** All effects that the test does not reject at 1 − level; unbounded when there are too few arrangements. */
export function notRejected({ from, to }: Stretches, exact: boolean, level: number): Interval {
  const count = from.length;
  const alpha = 1 - level;
  const allowed = exact ? alpha * count : alpha * (count + 1) - 1;
  const needed = Math.floor(allowed + 1e-9) + 1;
  if (needed <= 0) return { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY, level };
  return {
    low: from[needed - 1] ?? Number.NaN,
    high: to[count - needed] ?? Number.NaN,
    level,
  };
}
