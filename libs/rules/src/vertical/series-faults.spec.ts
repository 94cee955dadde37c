import fc from 'fast-check';
import { seriesFaults } from './series-faults.js';
import { parseVerticalCell } from './vertical-cell.js';

function faults(cells: readonly string[], standardIndex: number | null = null): string[] {
  return seriesFaults(cells.map(parseVerticalCell), standardIndex).map(
    ({ index, code }) => `${index} ${code}`,
  );
}

describe('what cannot be in a series', () => {
  it.each([
    [['X-', 'XX', 'O'], ['2 AFTER_THREE_FAILURES']],
    [
      ['XXX', '-', '', 'O'],
      ['1 AFTER_THREE_FAILURES', '3 GAP'],
    ],
    [['X-', 'XXX'], ['1 AFTER_THREE_FAILURES']],
    [
      ['X-', 'XXO', 'O'],
      ['1 AFTER_THREE_FAILURES', '2 AFTER_THREE_FAILURES'],
    ],
    [['XX-', 'X-'], ['1 AFTER_THREE_FAILURES']],
    [['XX-', 'Xr'], ['1 AFTER_THREE_FAILURES']],
    [['X', 'O'], ['0 OPEN_HEIGHT']],
    [
      ['XX', '', 'O'],
      ['0 OPEN_HEIGHT', '2 GAP'],
    ],
    [
      ['O', 'XX', 'XO'],
      ['1 OPEN_HEIGHT', '2 AFTER_THREE_FAILURES'],
    ],
    [['r', '-'], ['1 AFTER_RETIRING']],
    [
      ['Xr', 'XXX', 'O'],
      ['1 AFTER_RETIRING', '2 AFTER_RETIRING'],
    ],
    [['O', '', 'O'], ['2 GAP']],
  ])('%j: %j', (cells, expected) => {
    expect(faults(cells)).toEqual(expected);
  });

  it.each([
    [['O', 'XXX']],
    [['X-', 'XX']],
    [['XX-', 'X']],
    [['XX-', '-', 'O', 'XX-', 'X']],
    [['X-', 'XO', 'XXO', 'XXX']],
    [['O', 'X', '', '']],
    [['XX']],
    [['XXr']],
    [[]],
  ])('%j may be', (cells) => {
    expect(faults(cells)).toEqual([]);
  });

  it('ends with the first cleared height that reaches the standard', () => {
    expect(faults(['O', 'O', 'O'], 1)).toEqual(['2 AFTER_STANDARD']);
    expect(faults(['O', '-', 'XO', '-'], 1)).toEqual(['3 AFTER_STANDARD']);
    expect(faults(['O', 'XX-', '-', 'X'], 1)).toEqual([]);
    expect(faults(['O', 'O', '', 'O'], 1)).toEqual(['3 GAP']);
    expect(faults(['O', 'O', 'O'], null)).toEqual([]);
  });

  // Trial by trial, as the rules let a competitor go on: what was jumped that way is never at fault.
  it('is nothing that could be jumped', () => {
    const trial = fc.constantFrom('O', 'X', '-', 'r');
    fc.assert(
      fc.property(fc.array(trial, { maxLength: 25 }), (trials) => {
        expect(faults(jumped(trials))).toEqual([]);
      }),
      { numRuns: 20_000 },
    );
  });
});

/** The card of somebody whose trials end like this, one after the other, for as long as he may jump. */
function jumped(trials: readonly string[]): string[] {
  const cells: string[] = [''];
  let failures = 0;
  for (const trial of trials) {
    cells[cells.length - 1] += trial;
    failures = trial === 'O' ? 0 : trial === 'X' ? failures + 1 : failures;
    if (failures === 3 || trial === 'r') break;
    if (trial !== 'X') cells.push('');
  }
  return cells;
}
