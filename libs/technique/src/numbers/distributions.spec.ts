import {
  betaQuantile,
  chiSquareCdf,
  chiSquareQuantile,
  normalCdf,
  normalQuantile,
  tCdf,
  tQuantile,
  zOf,
} from './distributions.js';

describe('the distributions', () => {
  // qbeta, qt, pnorm, qnorm, qchisq, pchisq, pt of R 4.2.2, and scipy 1.17 to more digits.
  it.each([
    ['beta', betaQuantile(0.025, 11.5, 25.5), 0.17444381179],
    ['beta with k = 0', betaQuantile(0.975, 0.5, 12.5), 0.18530593831],
    ['t', tQuantile(0.975, 9), 2.262157162798],
    ['t of one degree', tQuantile(0.975, 1), 12.706204736175],
    ['t below', tCdf(-1.2179, 39), 0.11528962886],
    ['normal far out', normalCdf(-4.2), 1.334574901591e-5],
    ['normal', normalCdf(1.2345), 0.891492],
    ['normal quantile', normalQuantile(0.975), 1.95996398454],
    ['normal quantile far out', normalQuantile(1e-6), -4.753424308823],
    ['chi-square low', chiSquareQuantile(0.025, 20), 9.590777392265],
    ['chi-square high', chiSquareQuantile(0.975, 20), 34.169606902838],
    ['chi-square below', chiSquareCdf(3.42279, 1), 0.935697746007],
  ])('agree with R: %s', (_name, found, expected) => {
    expect(Math.abs(found / expected - 1)).toBeLessThan(5e-7);
  });

  it('give 1.96 for 95 per cent', () => {
    expect(zOf(0.95)).toBeCloseTo(1.95996398454, 10);
  });
});
