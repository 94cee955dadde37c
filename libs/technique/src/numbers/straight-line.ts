import { mean } from './moments.js';

/** y = intercept + slope · x by least squares. */
export interface StraightLine {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptError: number;
  readonly slopeError: number;
  readonly residualSd: number;
  readonly rSquared: number;
  readonly freedom: number;
}

/** `null` for fewer than three points, or when all x are the same. */
export function straightLine(x: readonly number[], y: readonly number[]): StraightLine | null {
  const freedom = x.length - 2;
  const [middleX, middleY] = [mean(x), mean(y)];
  const dx = x.map((value) => value - middleX);
  const dy = y.map((value) => value - middleY);
  const product = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((total, value, at) => total + value * (b[at] ?? 0), 0);
  const spread = product(dx, dx);
  if (freedom < 1 || spread === 0) return null;
  const slope = product(dx, dy) / spread;
  const left = dx.map((value, at) => (dy[at] ?? 0) - slope * value);
  const residualSd = Math.sqrt(product(left, left) / freedom);
  return {
    slope,
    intercept: middleY - slope * middleX,
    slopeError: residualSd / Math.sqrt(spread),
    interceptError: residualSd * Math.sqrt(1 / x.length + middleX ** 2 / spread),
    residualSd,
    rSquared: 1 - product(left, left) / product(dy, dy),
    freedom,
  };
}
