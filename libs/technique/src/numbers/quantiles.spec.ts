import { median, quantile, type QuantileType } from './quantiles.js';

/** NIST/SEMATECH e-Handbook, section 7.2.6.2: twelve gauge readings. */
const GAUGE = [
  95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682,
];
const SHARES = [0.1, 0.25, 0.5, 0.75, 0.9];

describe('a quantile', () => {
  it('of the handbook is 95.1981 at 90 per cent, by its (n + 1)p rule', () => {
    expect(quantile(GAUGE, 0.9, 6)).toBeCloseTo(95.1981, 4);
  });

  // The nine types of Hyndman and Fan, computed with numpy 2.4.
  it.each<[QuantileType, number[]]>([
    [1, [95.0925, 95.1065, 95.1567, 95.1772, 95.1959]],
    [2, [95.0925, 95.113, 95.1579, 95.18545, 95.1959]],
    [3, [95.061, 95.1065, 95.1567, 95.1772, 95.1959]],
    [4, [95.0673, 95.1065, 95.1567, 95.1772, 95.19546]],
    [5, [95.08305, 95.113, 95.1579, 95.18545, 95.19683]],
    [6, [95.07045, 95.10975, 95.1579, 95.189575, 95.19807]],
    [7, [95.0939, 95.11625, 95.1579, 95.181325, 95.19568]],
    [8, [95.07885, 95.11191666666666, 95.1579, 95.186825, 95.19724333333333]],
    [9, [95.0799, 95.1121875, 95.1579, 95.18648125, 95.19713999999999]],
  ])('of type %d', (type, expected) => {
    SHARES.forEach((share, at) => expect(quantile(GAUGE, share, type)).toBeCloseTo(expected[at] ?? 0, 9));
  });

  it('stays within the values, and is none without any', () => {
    expect([quantile([3], 0, 6), quantile([3, 5], 1, 6), quantile([3, 5], 0, 1)]).toEqual([3, 5, 3]);
    expect(median([])).toBeNaN();
  });
});
