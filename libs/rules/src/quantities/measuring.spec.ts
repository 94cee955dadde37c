import fc from 'fast-check';
import { fraction } from './fraction.js';
import { formatMark } from './mark.js';
import { isOnStep, measureDown, measureDownMillimetres, parseReading } from './measuring.js';

/** The mark recorded from a reading, written as on the card. */
function recorded(text: string, step: number): string | null {
  const reading = parseReading(text);
  return reading && formatMark(measureDown(reading.exact, step), reading.unit);
}

describe('measuring down', () => {
  // World Athletics TR32: the centimetre below. NFHS: the quarter inch below, for the long throws the inch below.
  it.each([
    ['61.2399', 1, '61.23'],
    ['61.23', 1, '61.23'],
    ['7.009999999999999999999', 1, '7.00'],
    ['47-06.49', 1, '47-06.25'],
    ['47-06.5', 1, '47-06.50'],
    ['47-6.5', 1, '47-06.50'],
    ['175-06.99', 4, '175-06.00'],
    ['175-11.75', 4, '175-11.00'],
  ])('%s in steps of %d is %s', (text, step, mark) => {
    expect(recorded(text, step)).toBe(mark);
  });

  it.each(['', '61', '61,23', '-61.23', '47-12', '47-', '1e2.0', '47-06.'])('%j is no reading', (text) => {
    expect(parseReading(text)).toBeNull();
  });

  it('takes the centimetre below a number of millimetres', () => {
    expect([52_989, 52_980, 9].map(measureDownMillimetres)).toEqual([5298, 5298, 0]);
  });

  it('never gives a centimetre away and never takes a whole one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), fc.constantFrom(1, 4), (hundredths, step) => {
        const mark = measureDown(fraction(hundredths, 100), step);
        expect(isOnStep(mark, step)).toBe(true);
        expect(mark * 100).toBeLessThanOrEqual(hundredths);
        expect((mark + step) * 100).toBeGreaterThan(hundredths);
      }),
      { numRuns: 20_000 },
    );
  });

  it('tells a mark that is finer than its event is measured', () => {
    expect(isOnStep(8, 4)).toBe(true);
    expect(isOnStep(9, 4)).toBe(false);
    expect(isOnStep(9, 1)).toBe(true);
  });
});
