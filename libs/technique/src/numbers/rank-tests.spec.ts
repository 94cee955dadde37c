import { kendall } from './kendall.js';
import { kruskalWallis, rankSum, ranksOf, signedRank } from './rank-tests.js';

// Worked examples of R's help pages, after Hollander and Wolfe, "Nonparametric Statistical Methods" (1973).
describe('rank tests', () => {
  it('signed rank: depression scores, p. 29', () => {
    const x = [1.83, 0.5, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.3];
    const y = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];
    const { statistic, p } = signedRank(x, y, 'greater');
    expect(statistic).toBe(40);
    expect(p).toBeCloseTo(0.01953125, 10);
  });

  it('rank sum: permeability, p. 69', () => {
    const x = [0.8, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46];
    const y = [1.15, 0.88, 0.9, 0.74, 1.21];
    const { statistic, p } = rankSum(x, y, 'greater');
    expect(statistic).toBe(35);
    expect(p).toBeCloseTo(0.1272061272061272, 10);
  });

  it('Kruskal–Wallis: clearance half times, p. 115', () => {
    const { statistic, freedom, p } = kruskalWallis([
      [2.9, 3.0, 2.5, 2.6, 3.2],
      [3.8, 2.7, 4.0, 2.4],
      [2.8, 3.4, 3.7, 2.2, 2.0],
    ]);
    expect(statistic).toBeCloseTo(0.7714285714285722, 10);
    expect(freedom).toBe(2);
    expect(p).toBeCloseTo(0.6799647735788936, 9);
  });

  it('Kendall: tuna, p. 185', () => {
    const x = [44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1];
    const y = [2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8];
    const greater = kendall(x, y, 'greater');
    expect(greater.concordant).toBe(26);
    expect(greater.tau).toBeCloseTo(0.4444444, 7);
    expect(greater.p).toBeCloseTo(0.05972, 5);
    expect(kendall(x, y).p).toBeCloseTo(0.11943893298059964, 10);
  });
});

describe('ties', () => {
  it('share the middle of their ranks', () => {
    expect(ranksOf([5, 1, 5, 3])).toEqual([3.5, 1, 3.5, 2]);
  });

  it('keep the signed-rank test exact', () => {
    // By hand: |d| = 1, 1, 2 all positive; only one of the eight sign patterns gives as much.
    expect(signedRank([2, 3, 5], [1, 2, 3], 'greater').p).toBeCloseTo(1 / 8, 12);
    expect(signedRank([2, 3, 5, 7], [1, 2, 3, 7]).p).toBeCloseTo(2 / 8, 12);
  });

  it('keep the rank-sum test exact', () => {
    // By hand: of the six ways to choose two of 1, 1, 2, 2 one gives 2 and 2.
    expect(rankSum([2, 2], [1, 1], 'greater').p).toBeCloseTo(1 / 6, 12);
  });

  it('make tau nothing when everything is tied', () => {
    expect(kendall([1, 1, 1], [2, 2, 2])).toMatchObject({ tau: null, p: 1, exact: false });
  });
});
