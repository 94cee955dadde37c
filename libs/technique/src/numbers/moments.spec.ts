import { lag1Autocorrelation, mean, standardDeviation, variance } from './moments.js';

describe('mean, standard deviation and lag-1 autocorrelation', () => {
  // NIST StRD, certified: NumAcc1 and NumAcc2, made so that one-pass formulas fail.
  it('keep their digits where values have many in common', () => {
    const values = [10_000_001, 10_000_003, 10_000_002];
    expect(mean(values)).toBe(10_000_002);
    expect(standardDeviation(values)).toBe(1);
    expect(lag1Autocorrelation(values)).toBe(-0.5);
  });

  it('keep their digits over a thousand values', () => {
    const values = [1.2, ...Array.from({ length: 1000 }, (_, at) => (at % 2 === 0 ? 1.1 : 1.3))];
    expect(mean(values)).toBeCloseTo(1.2, 14);
    expect(standardDeviation(values)).toBeCloseTo(0.1, 14);
    expect(lag1Autocorrelation(values)).toBeCloseTo(-0.999, 13);
  });

  it('are not numbers where there is nothing to count', () => {
    expect(mean([])).toBeNaN();
    expect(variance([3])).toBeNaN();
  });
});
