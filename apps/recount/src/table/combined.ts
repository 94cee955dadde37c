import type { CombinedRow } from '#rules';
import type { CombinedSheet } from '../sheet.js';
import { grid, type Column } from './grid.js';
import { placeCell } from './place.js';

/** Combined events: for each competitor a line of marks and, under it, a line of what they are worth. */
export function combinedTable(sheet: CombinedSheet, results: readonly CombinedRow[]): string[] {
  const entered = new Map(sheet.rows.map((row) => [row.bib, row]));
  const events = Object.keys(results[0]?.eventPoints ?? {});
  const rows = results.flatMap((row) => {
    const { name = '', club = '', marks = {} } = entered.get(row.bib) ?? {};
    const cells = events.map((event) => marks[event] ?? '–');
    const worth = events.map((event) => `${row.eventPoints[event] ?? ''}`);
    return [
      [placeCell(row), row.bib, name, club, ...cells, `${row.points}`],
      ['', '', '', '', ...worth, ''],
    ];
  });
  return grid(
    [
      { title: 'Place', align: 'right' },
      { title: 'Bib', align: 'left' },
      { title: 'Name', align: 'left', optional: true },
      { title: 'Club', align: 'left', optional: true },
      ...events.map((title): Column => ({ title, align: 'right' })),
      { title: 'Points', align: 'right' },
    ],
    rows,
  );
}
