import { eventsOf, isRun } from './combined-points.js';
import type { Draw } from './draw.js';
import type { Expected, Faulty } from './fault-shapes.js';
import { combinedSheet } from './generate-combined.js';
import type { CombinedRow, CombinedSheet } from './shapes.js';

type CombinedFault = (draw: Draw, sheet: CombinedSheet, row: CombinedRow, path: string) => Expected;

const MALFORMED_TIMES = [
  '61.20',
  '10.999',
  '10',
  '1:60.00',
  '1:5.20',
  '1:05.2.0',
  '-10.00',
  '10,50',
  'DNF',
  '',
  '0.00',
];
const MALFORMED_MARKS = ['7.5', '07.50', '0.00', 'NM', 'X', 'O', '7.50 +1.0', '1000.00', '-', ''];

function malformed(draw: Draw, sheet: CombinedSheet, row: CombinedRow, path: string): Expected {
  const event = draw.pick(eventsOf(sheet.table));
  const tenths = sheet.timing === 'hand' ? [] : ['10.9', '2:05.1'];
  row.marks[event] = draw.pick(isRun(event) ? [...MALFORMED_TIMES, ...tenths] : MALFORMED_MARKS);
  return { code: 'CELL', path: `${path}/marks/${event}` };
}

const FAULTS: Record<string, CombinedFault> = {
  'an event of a combined row missing': (draw, sheet, row, path) => {
    const event = draw.pick(eventsOf(sheet.table));
    delete row.marks[event];
    return { code: 'MISSING', path: `${path}/marks/${event}` };
  },
  'an event of another table': (_, __, row, path) => {
    row.marks['5000m'] = '15:00.00';
    return { code: 'UNKNOWN_KEY', path: `${path}/marks/5000m` };
  },
  'a malformed mark or time in a combined row': malformed,
  'a mark of a combined row of a wrong type': (draw, sheet, row, path) => {
    const event = draw.pick(eventsOf(sheet.table));
    (row.marks as Record<string, unknown>)[event] = draw.pick([7.5, true, []]);
    return { code: 'WRONG_TYPE', path: `${path}/marks/${event}` };
  },
  'a bib twice in combined events': (_, sheet, row) => {
    sheet.rows.push({ ...row });
    return { code: 'DUPLICATE', path: `/rows/${sheet.rows.length - 1}/bib` };
  },
  'an unknown table or timing': (draw, sheet) => {
    const key = draw.pick(['table', 'timing'] as const);
    (sheet as unknown as Record<string, unknown>)[key] = draw.pick(['throws', '', 'Decathlon']);
    return { code: 'UNKNOWN_VALUE', path: `/${key}` };
  },
  'a part of a combined sheet missing': (draw, sheet) => {
    const key = draw.pick(['table', 'rows'] as const);
    delete (sheet as Partial<CombinedSheet>)[key];
    return { code: 'MISSING', path: `/${key}` };
  },
};

function spoiled(draw: Draw, fault: CombinedFault): Faulty {
  for (;;) {
    const sheet = combinedSheet(draw);
    if (sheet.rows.length === 0) continue;
    const at = draw.below(sheet.rows.length);
    const expected = fault(draw, sheet, sheet.rows[at] as CombinedRow, `/rows/${at}`);
    return { source: JSON.stringify(sheet), expected };
  }
}

export const COMBINED_FAULTS: Record<string, (draw: Draw) => Faulty> = Object.fromEntries(
  Object.entries(FAULTS).map(([name, fault]) => [name, (draw: Draw) => spoiled(draw, fault)]),
);
