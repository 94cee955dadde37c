import fc from 'fast-check';
import { compareMarks, formatMark, isMark, MAX_MARK, parseMark, type Unit } from './mark.js';

const anyMark = fc
  .constantFrom<Unit>('cm', 'qin')
  .chain((unit) =>
    fc.record({ unit: fc.constant(unit), value: fc.integer({ min: 1, max: MAX_MARK[unit] }) }),
  );

describe('a mark', () => {
  it.each([
    ['52.98', 'cm', 5298],
    ['0.01', 'cm', 1],
    ['7.00', 'cm', 700],
    ['999.99', 'cm', 99_999],
    ['47-06.25', 'qin', (47 * 12 + 6) * 4 + 1],
    ['0-00.25', 'qin', 1],
    ['6-11.75', 'qin', 335],
    ['999-11.75', 'qin', 47_999],
  ] as const)('%s is %s %d', (text, unit, value) => {
    expect(parseMark(text)).toEqual({ unit, value });
  });

  it.each([
    '0.00',
    '0-00.00',
    '52.9',
    '52.980',
    '052.98',
    '00.98',
    '.98',
    '1000.00',
    '+52.98',
    '-52.98',
    '52,98',
    '52.98 ',
    ' 52.98',
    '52.98\n',
    '5298',
    '1e2',
    '47-6.25',
    '47-12.00',
    '47-06',
    '47-06.2',
    '47-06.10',
    '047-06.25',
    '1000-00.00',
    "47'6",
    '４７.00',
    '',
    'O',
    'X',
    '-',
  ])('%j is malformed', (text) => {
    expect(parseMark(text)).toBeNull();
  });

  it('is read back as it was written', () => {
    fc.assert(
      fc.property(anyMark, ({ unit, value }) => {
        expect(parseMark(formatMark(value, unit))).toEqual({ unit, value });
      }),
      { numRuns: 20_000 },
    );
  });

  it('is written back as it was read', () => {
    const text = fc.oneof(
      fc.stringMatching(/^(0|[1-9]\d{0,2})\.\d\d$/),
      fc.stringMatching(/^(0|[1-9]\d{0,2})-(0\d|1[01])\.(00|25|50|75)$/),
      fc.string(),
    );
    fc.assert(
      fc.property(text, (written) => {
        const mark = parseMark(written);
        if (mark) expect(formatMark(mark.value, mark.unit)).toBe(written);
        else expect(written).not.toMatch(/^([1-9]\d{0,2}\.\d\d|[1-9]\d{0,2}-(0\d|1[01])\.(00|25|50|75))$/);
      }),
      { numRuns: 20_000 },
    );
  });

  it('keeps the order of its numbers when written, so that no place hangs on text', () => {
    expect(compareMarks({ unit: 'cm', value: 999 }, { unit: 'cm', value: 1000 })).toBeLessThan(0);
    expect(compareMarks({ unit: 'qin', value: 40 }, { unit: 'qin', value: 40 })).toBe(0);
    expect(compareMarks({ unit: 'qin', value: 41 }, { unit: 'qin', value: 40 })).toBeGreaterThan(0);
  });

  it('is never compared with one in another unit', () => {
    expect(() => compareMarks({ unit: 'cm', value: 1 }, { unit: 'qin', value: 1 })).toThrow(RangeError);
  });

  it.each([-1, 0.5, Number.NaN, Infinity])('%d units are no mark to write', (value) => {
    expect(() => formatMark(value, 'cm')).toThrow(RangeError);
    expect(isMark(value, 'cm')).toBe(false);
  });

  it('has a least and a greatest', () => {
    expect([0, 1, 99_999, 100_000].map((value) => isMark(value, 'cm'))).toEqual([false, true, true, false]);
    expect([0, 1, 47_999, 48_000].map((value) => isMark(value, 'qin'))).toEqual([false, true, true, false]);
  });
});
