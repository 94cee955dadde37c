import fc from 'fast-check';
import { MAX_MARK, type Unit } from '../quantities/mark.js';
import type { Trial } from '../trial.js';
import { formatDistanceCell, parseDistanceCell } from './distance-cell.js';

function trial(outcome: Trial['outcome'], mark: number | null = null, wind: Trial['wind'] = null): Trial {
  return { outcome, mark, wind };
}

describe('a cell of a throw or a horizontal jump', () => {
  it.each([
    ['52.98', trial('valid', 5298), 'cm'],
    ['0.01', trial('valid', 1), 'cm'],
    ['47-06.25', trial('valid', 2281), 'qin'],
    ['7.46 +1.3', trial('valid', 746, 13), 'cm'],
    ['7.46 -12.0', trial('valid', 746, -120), 'cm'],
    ['7.46 NWI', trial('valid', 746, 'NWI'), 'cm'],
    ['24-05.50 +0.0', trial('valid', 1174, 0), 'qin'],
    ['O', trial('unmeasured'), null],
    ['X', trial('foul'), null],
    ['X -0.4', trial('foul', null, -4), null],
    ['-', trial('pass'), null],
    ['r', trial('retired'), null],
  ])('%s is read, and written again', (text, expected, unit) => {
    expect(parseDistanceCell(text)).toEqual({ trial: expected, unit });
    expect(formatDistanceCell(expected, unit === 'qin' ? 'qin' : 'cm')).toBe(text);
  });

  it.each([
    '',
    ' ',
    'x',
    'o',
    'R',
    'NM',
    '0.00',
    '0-00.00',
    '05.00',
    '1000.00',
    '5.0',
    '5,00',
    '47-6.25',
    '47-12.00',
    '47-06.20',
    '5.00 ',
    ' 5.00',
    '5.00  +1.0',
    '5.00 1.0',
    '5.00 +1',
    '5.00 -0.0',
    '5.00 nwi',
    '5.00\u00a0+1.0',
    'X NWI',
    'X -0.0',
    'O +1.0',
    '- +1.0',
    'r NWI',
    'XO',
    '٥.٠٠',
    'toString',
    '__proto__',
  ])('%j is malformed', (text) => {
    expect(parseDistanceCell(text)).toBeNull();
  });

  const trials = fc.oneof(
    fc.record({
      unit: fc.constantFrom<Unit>('cm', 'qin'),
      mark: fc.integer({ min: 1, max: MAX_MARK.qin }),
      wind: fc.oneof(fc.constantFrom(null, 'NWI' as const), fc.integer({ min: -999, max: 999 })),
    }),
  );

  it('is read as it was written, whatever the mark and the wind', () => {
    fc.assert(
      fc.property(trials, ({ unit, mark, wind }) => {
        const written = trial('valid', mark, wind);
        expect(parseDistanceCell(formatDistanceCell(written, unit))).toEqual({ trial: written, unit });
      }),
    );
  });

  it('is written without a wind that is still expected, or that a failure cannot have', () => {
    expect(formatDistanceCell(trial('valid', 746, 'pending'), 'cm')).toBe('7.46');
    expect(formatDistanceCell(trial('foul', null, 'NWI'), 'cm')).toBe('X');
  });
});
