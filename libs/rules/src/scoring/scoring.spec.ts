import { formatPoints } from '../quantities/fraction.js';
import { parsePlacePoints } from './scoring.js';

describe('the points of a place', () => {
  it.each(['0', '10', '7.5', '0.125', '10000', '9999.999'])('%s is exact', (text) => {
    const points = parsePlacePoints(text);
    expect(points && formatPoints(points)).toBe(text);
  });

  it.each(['-1', '-0.001', '10000.001', '0.0001', '1e3', '1/2', '', 'NaN', 'Infinity', ' 1', '1.'])(
    '%j is not that',
    (text) => {
      expect(parsePlacePoints(text)).toBeNull();
    },
  );

  it('may be a number as JSON gives it', () => {
    for (let thousandths = 0; thousandths <= 10_000_000; thousandths += 997) {
      const number = JSON.parse(
        `${Math.floor(thousandths / 1000)}.${String(thousandths % 1000).padStart(3, '0')}`,
      );
      const points = parsePlacePoints(String(number));
      expect(points && points.numerator * 1000n).toBe(points && BigInt(thousandths) * points.denominator);
      expect(points).not.toBeNull();
    }
  });
});
