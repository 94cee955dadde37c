import { readSheetSource } from '../sheet/read-sheet.js';
import { qualifyingReason } from './qualifying-reason.js';
import { qualifyingTable } from './qualifying-table.js';
import type { Card } from '../card.js';

function group(...lines: readonly (readonly [string, string[], object?])[]): Card {
  const sheet = {
    format: 'sectorline-sheet/1',
    rules: 'WA',
    event: 'hammer',
    stage: 'qualification',
    qualifying: { standard: '60.00', fill: 4 },
    competitors: lines.map(([bib, series, more]) => ({ bib, series, ...more })),
    admitted: lines.some(([bib]) => bib === '7') ? [{ bib: '7', by: 'R' }] : [],
  };
  const reading = readSheetSource(JSON.stringify(sheet));
  if (!('content' in reading) || reading.content.kind !== 'distance')
    throw new Error(JSON.stringify(reading));
  return reading.content.card;
}

const A = group(['1', ['61.00']], ['2', ['55.00', '50.00']], ['3', ['54.00']], ['7', ['X']]);
const B = group(
  ['11', ['56.00']],
  ['12', ['55.00', '50.00']],
  ['13', ['X', 'X', 'X']],
  ['14', ['57.00'], { guest: true }],
  ['15', [], { status: 'DNS' }],
  ['16', ['58.00'], { status: 'DQ' }],
  ['17', ['55.00', '49.99']],
);

function reasons(groups: readonly Card[], fill: number): Record<string, string> {
  const outcome = qualifyingTable(groups, fill);
  if (!outcome.ok) throw new Error('no table');
  const { table } = outcome;
  return Object.fromEntries(
    table.rows.map((one) => [one.row.bib, qualifyingReason(table, one, { standard: '60.00', fill })]),
  );
}

describe('why somebody goes on', () => {
  it('is told for the standard, the places filled up with, a tie for the last, and admissions', () => {
    expect(reasons([A, B], 3)).toEqual({
      1: 'Reached the standard of 60.00 with 61.00.',
      2: '3rd over all groups with 55.00, level with others for the last of 3 places: all of them go on, 4 in all.',
      3: '6th over all groups with 54.00; the last who goes on has 55.00.',
      7: 'Admitted by the referee.',
      11: '2nd over all groups with 56.00, among the best 3.',
      12: '3rd over all groups with 55.00, level with others for the last of 3 places: all of them go on, 4 in all.',
      13: 'No valid mark.',
      14: 'Competes out of the ranking.',
      15: 'Did not start.',
      16: 'Disqualified.',
      17: '5th over all groups with 55.00; the last who goes on has the same mark and is ahead by what breaks the tie.',
    });
  });

  it('says what was missing where nobody is filled up with', () => {
    expect(reasons([A, B], 0)['11']).toBe('2nd over all groups with 56.00; the standard is 60.00.');
    expect(reasons([A, B], 1)['11']).toBe(
      '2nd over all groups with 56.00; 1 reached the standard of 60.00, and nobody is filled up with.',
    );
  });
});
