import fc from 'fast-check';
import { toImperial, toMetric } from './conversion.js';
import { formatMark, parseMark } from './mark.js';

const HEIGHT = { step: 'quarter', kind: 'vertical' } as const;
const SHORT = { step: 'quarter', kind: 'other' } as const;
const LONG = { step: 'inch', kind: 'other' } as const;

function cm(text: string): number {
  return parseMark(text)?.value ?? Number.NaN;
}

describe('metric to imperial', () => {
  // The qualifying standards for the 2013 World Youth Championships as the US federation printed them in both units.
  it.each([
    ['2.03', HEIGHT, '6-08.00'],
    ['1.76', HEIGHT, '5-09.25'],
    ['4.55', HEIGHT, '14-11.00'],
    ['3.70', HEIGHT, '12-01.50'],
    ['7.20', SHORT, '23-07.50'],
    ['5.90', SHORT, '19-04.25'],
    ['14.60', SHORT, '47-10.75'],
    ['12.30', SHORT, '40-04.25'],
    ['17.70', SHORT, '58-01.00'],
    ['13.50', SHORT, '44-03.50'],
    ['53.50', LONG, '175-06.00'],
    ['42.00', LONG, '137-09.00'],
    ['63.00', LONG, '206-08.00'],
    ['52.00', LONG, '170-07.00'],
    ['46.00', LONG, '150-11.00'],
  ])('%s is listed as in the standards', (metric, style, imperial) => {
    expect(formatMark(toImperial(cm(metric), style), 'qin')).toBe(imperial);
  });

  // World records as almanacs of 1998 print them in feet and inches; the metric marks are those of the record lists.
  it.each([
    ['2.45', HEIGHT, '8-00.50'],
    ['6.14', HEIGHT, '20-01.75'],
    ['8.95', SHORT, '29-04.50'],
    ['18.29', SHORT, '60-00.25'],
    ['23.12', SHORT, '75-10.25'],
    ['74.08', LONG, '243-00.00'],
    ['98.48', LONG, '323-01.00'],
    ['86.74', LONG, '284-07.00'],
  ])('%s is listed as in the almanac', (metric, style, imperial) => {
    expect(formatMark(toImperial(cm(metric), style), 'qin')).toBe(imperial);
  });

  // 2.00 m: a statistics handbook's own example of its method, against plain truncation.
  it('differs from truncation where the handbook lifts a height over the next quarter', () => {
    expect(formatMark(toImperial(200, HEIGHT), 'qin')).toBe('6-06.75');
    expect(formatMark(toImperial(200, { ...HEIGHT, method: 'truncated' }), 'qin')).toBe('6-06.50');
  });

  it('is exact where floating point is not: 2.03 m and 0.2 cm are 80 inches', () => {
    expect(Math.floor(((2.03 * 100 + 0.2) / 2.54) * 4)).toBe(319);
    expect(toImperial(203, HEIGHT)).toBe(320);
  });

  it('takes the step that lies at or below the lifted mark', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99_999 }),
        fc.constantFrom(HEIGHT, SHORT, LONG),
        (mark, style) => {
          const step = style.step === 'inch' ? 4n : 1n;
          const converted = BigInt(toImperial(mark, style));
          // In hundred-thousandths of a centimetre a quarter inch is 63,500.
          const lifted = BigInt(mark) * 100_000n + (style.kind === 'vertical' ? 20_000n : 49_900n);
          expect(converted % step).toBe(0n);
          expect(converted * 63_500n <= lifted).toBe(true);
          expect((converted + step) * 63_500n > lifted).toBe(true);
        },
      ),
      { numRuns: 20_000 },
    );
  });
});

describe('imperial to metric', () => {
  // By definition an inch is 2.54 cm (international yard and pound agreement, 1959); the centimetre below is common
  // practice without a published source.
  it.each([
    ['1-00.00', '0.30'],
    ['8-04.00', '2.54'],
    ['6-08.00', '2.03'],
    ['175-06.00', '53.49'],
    ['58-01.00', '17.70'],
  ])('%s is %s', (imperial, metric) => {
    expect(formatMark(toMetric(parseMark(imperial)?.value ?? Number.NaN), 'cm')).toBe(metric);
  });

  it('takes the centimetre at or below', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 47_999 }), (quarterInches) => {
        const converted = BigInt(toMetric(quarterInches));
        const thousandths = BigInt(quarterInches) * 635n;
        expect(converted * 1000n <= thousandths && thousandths < (converted + 1n) * 1000n).toBe(true);
      }),
      { numRuns: 20_000 },
    );
  });
});
