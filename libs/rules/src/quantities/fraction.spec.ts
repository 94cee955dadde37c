import fc from 'fast-check';
import {
  add,
  compare,
  divide,
  floor,
  type Fraction,
  formatPoints,
  fraction,
  multiply,
  parseDecimal,
  ZERO,
} from './fraction.js';

const anyFraction = fc
  .tuple(fc.integer({ min: -10_000_000, max: 10_000_000 }), fc.integer({ min: 1, max: 10_000 }))
  .map(([n, d]) => fraction(n, d));

/** Reads published points back, whichever way they were written. */
function readPoints(text: string): Fraction {
  const [n, d] = text.split('/');
  const whole = parseDecimal(n ?? '');
  if (!whole) throw new Error(`"${text}" is no number of points.`);
  return d === undefined ? whole : divide(whole, fraction(BigInt(d)));
}

describe('a fraction', () => {
  it('is kept in lowest terms with a positive denominator', () => {
    expect(fraction(6, -4)).toEqual({ numerator: -3n, denominator: 2n });
    expect(fraction(0, 7)).toEqual(ZERO);
  });

  it('has no denominator of zero', () => {
    expect(() => fraction(1, 0)).toThrow(RangeError);
    expect(() => divide(fraction(1), ZERO)).toThrow(RangeError);
  });

  it('adds thirds to a whole', () => {
    const third = divide(fraction(1), fraction(3));
    expect(add(add(third, third), third)).toEqual(fraction(1));
  });

  it('is ordered exactly where floating point sees no difference', () => {
    const large = 10n ** 20n;
    expect(compare(fraction(large, large + 1n), fraction(large + 1n, large + 2n))).toBe(-1);
    expect(compare(fraction(1, 2), fraction(2, 4))).toBe(0);
    expect(compare(fraction(1, 2), fraction(-1, 2))).toBe(1);
  });

  it('has a floor on both sides of zero', () => {
    expect([fraction(7, 2), fraction(-7, 2), fraction(4, 2)].map(floor)).toEqual([3n, -4n, 2n]);
  });

  it('obeys the laws that sharing points relies on', () => {
    fc.assert(
      fc.property(anyFraction, anyFraction, fc.integer({ min: 1, max: 50 }), (a, b, sharers) => {
        expect(add(a, b)).toEqual(add(b, a));
        expect(multiply(divide(a, fraction(sharers)), fraction(sharers))).toEqual(a);
      }),
      { numRuns: 20_000 },
    );
  });
});

describe('a decimal', () => {
  it.each([
    ['10', fraction(10)],
    ['0.125', fraction(1, 8)],
    ['-2.50', fraction(-5, 2)],
    ['0', ZERO],
    ['-0', ZERO],
  ])('%s is read exactly', (text, value) => {
    expect(parseDecimal(text)).toEqual(value);
  });

  it.each(['', '1.', '.5', '1e3', '+1', '1,5', ' 1', 'NaN', '1/2'])('%j is none', (text) => {
    expect(parseDecimal(text)).toBeNull();
  });
});

describe('points as published', () => {
  it.each([
    [fraction(15, 2), '7.5'],
    [ZERO, '0'],
    [fraction(19, 3), '19/3'],
    [fraction(100), '100'],
    [fraction(1, 8), '0.125'],
    [fraction(-1, 4), '-0.25'],
    [fraction(-1, 3), '-1/3'],
    [fraction(7001, 1000), '7.001'],
    // Two who share third place where 14 and 13 points are given: a team championship of sixteen.
    [divide(add(fraction(14), fraction(13)), fraction(2)), '13.5'],
  ])('%p are written %s', (points, text) => {
    expect(formatPoints(points)).toBe(text);
  });

  it('lose nothing, and end in no zero', () => {
    fc.assert(
      fc.property(anyFraction, (points) => {
        const text = formatPoints(points);
        expect(readPoints(text)).toEqual(points);
        expect(text).not.toMatch(/\.\d*0$|\.$/);
      }),
      { numRuns: 20_000 },
    );
  });
});
