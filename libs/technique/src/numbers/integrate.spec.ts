import { rootBetween } from './find-root.js';
import { integrate } from './integrate.js';
import { minimise } from './minimise.js';

describe('numbers by search', () => {
  it('integrate what has a closed form', () => {
    expect(integrate(Math.sin, 0, Math.PI)).toBeCloseTo(2, 10);
    expect(integrate((x) => Math.exp((-x * x) / 2), -10, 10)).toBeCloseTo(Math.sqrt(2 * Math.PI), 9);
    expect(integrate((x) => 1 / (1e-4 + x * x), -1, 1)).toBeCloseTo(200 * Math.atan(100), 6);
  });

  it('find a root, and none where the signs are the same', () => {
    expect(rootBetween((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 12);
    expect(rootBetween((x) => x * x + 1, 0, 2)).toBeNull();
    expect(rootBetween((x) => x, 0, 2)).toBe(0);
  });

  it('minimise a curved valley (Rosenbrock 1960)', () => {
    const found = minimise(([x = 0, y = 0]) => (1 - x) ** 2 + 100 * (y - x * x) ** 2, [-1.2, 1]);
    expect(found.at[0]).toBeCloseTo(1, 5);
    expect(found.at[1]).toBeCloseTo(1, 5);
  });
});
