import jStat from 'jstat';

/** The one place that knows which library the distributions come from; `distributions.spec.ts` holds it to R. */

/** P(Z ≤ z) of the standard normal distribution. */
export function normalCdf(z: number): number {
  return jStat.normal.cdf(z, 0, 1);
}

/** The z below which a share `p` of the standard normal distribution lies. */
export function normalQuantile(p: number): number {
  return jStat.normal.inv(p, 0, 1);
}

export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

export function tCdf(t: number, freedom: number): number {
  return jStat.studentt.cdf(t, freedom);
}

export function tQuantile(p: number, freedom: number): number {
  return jStat.studentt.inv(p, freedom);
}

export function chiSquareCdf(x: number, freedom: number): number {
  return jStat.chisquare.cdf(x, freedom);
}

export function chiSquareQuantile(p: number, freedom: number): number {
  return jStat.chisquare.inv(p, freedom);
}

export function betaQuantile(p: number, a: number, b: number): number {
  return jStat.beta.inv(p, a, b);
}

/** The z that leaves `1 − level` outside ±z: 1.96 for 0.95. */
export function zOf(level: number): number {
  return normalQuantile((1 + level) / 2);
}
