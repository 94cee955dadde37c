import { bca } from './bca.js';
import { mean } from './moments.js';

describe('the BCa interval', () => {
  it('of a mean over all 3,125 resamples of five marks', () => {
    // Exact enumeration, computed independently with scipy 1.17.
    const marks = [3120, 3205, 3088, 3194, 3340];
    const replicates: number[] = [];
    for (let code = 0; code < 5 ** 5; code++) {
      const total = [1, 5, 25, 125, 625].reduce(
        (s, place) => s + (marks[Math.floor(code / place) % 5] ?? 0),
        0,
      );
      replicates.push(total / 5);
    }
    const leftOut = marks.map((_, out) => mean(marks.filter((__, at) => at !== out)));
    const found = bca(3189.4, replicates, leftOut, 0.95);
    expect(found.bias).toBeCloseTo(0.0638119034, 8);
    expect(found.acceleration).toBeCloseTo(0.045881739, 8);
    expect(found.shares[0]).toBeCloseTo(0.0464222389, 8);
    expect(found.shares[1]).toBeCloseTo(0.9891259598, 8);
    expect([found.low, found.high]).toEqual([3128.4, 3283.8]);
  });
});
