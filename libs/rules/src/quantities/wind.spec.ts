import fc from 'fast-check';
import { formatWind, isWindLegal, MAX_WIND_TENTHS, parseWind, roundWindUp } from './wind.js';

describe('a wind', () => {
  it.each([
    ['+1.3', 13],
    ['-0.4', -4],
    ['+0.0', 0],
    ['+10.2', 102],
    ['-99.9', -999],
    ['NWI', 'NWI'],
  ])('%s is %p', (text, wind) => {
    expect(parseWind(text)).toBe(wind);
  });

  it.each([
    '-0.0',
    '-00.0',
    '1.3',
    '+1',
    '+1.33',
    '+.3',
    '+100.0',
    '+1,3',
    ' +1.3',
    '+1.3\n',
    '−1.3',
    'nwi',
    '',
    'pending',
  ])('%j is malformed', (text) => {
    expect(parseWind(text)).toBeNull();
  });

  it('is read back as it was written, and still air is never negative', () => {
    const tenths = fc.integer({ min: -MAX_WIND_TENTHS, max: MAX_WIND_TENTHS });
    fc.assert(
      fc.property(tenths, (wind) => {
        // toBe tells 0 from -0.
        expect(parseWind(formatWind(wind))).toBe(wind);
      }),
      { numRuns: 20_000 },
    );
    expect(formatWind(-0)).toBe('+0.0');
    expect(parseWind(formatWind('NWI'))).toBe('NWI');
  });

  it('refuses to write what is not whole tenths', () => {
    expect(() => formatWind(1.5)).toThrow(RangeError);
  });
});

describe('a wind reading', () => {
  // World Athletics TR17.10, from memory: up to the next tenth in the direction of the tail wind.
  it.each([
    [203, 21],
    [-203, -20],
    [-5, 0],
    [-10, -1],
    [-11, -1],
    [200, 20],
    [201, 21],
    [209, 21],
    [0, 0],
    [1, 1],
  ])('of %d hundredths is recorded as %d tenths', (hundredths, tenths) => {
    expect(roundWindUp(hundredths)).toBe(tenths);
  });

  it('is recorded as the least tenth not below it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9990, max: 9990 }), (hundredths) => {
        const tenths = roundWindUp(hundredths);
        expect(tenths * 10).toBeGreaterThanOrEqual(hundredths);
        expect((tenths - 1) * 10).toBeLessThan(hundredths);
        expect(Object.is(tenths, -0)).toBe(false);
      }),
      { numRuns: 20_000 },
    );
  });

  it('in parts of a hundredth is a mistake of the program', () => {
    expect(() => roundWindUp(20.3)).toThrow(RangeError);
  });
});

describe('the wind limit', () => {
  // World Athletics CR31: 2.0 m/s still counts, 2.1 does not. A reading of 2.01 is recorded as 2.1.
  it.each([
    [20, true],
    [roundWindUp(201), false],
    [-48, true],
    ['NWI', null],
    ['pending', null],
  ] as const)('lets %p count: %p', (wind, legal) => {
    expect(isWindLegal(wind, 20)).toBe(legal);
  });
});
