import { drawn, type Draw } from './draw.js';
import { COMBINED_FAULTS } from './faults-combined.js';
import { CELL_FAULTS } from './faults-cells.js';
import { DOCUMENT_FAULTS } from './faults-document.js';
import { TEXT_FAULTS } from './faults-text.js';
import { competitionSheet } from './generate-sheet.js';
import type { Expected, Fault, Faulty } from './fault-shapes.js';
import type { Sheet } from './shapes.js';

/** Sometimes the faulty sheet is one of a meet, and its paths begin with its place there. */
function inMeet(draw: Draw, sheet: Sheet, expected: Expected): Faulty {
  delete sheet.scoring;
  const at = draw.below(3);
  const sheets: Sheet[] = Array.from({ length: at }, () => competitionSheet(draw));
  sheets.push(sheet);
  const meet = { format: 'sectorline-meet/1', scoring: { places: [5, 3, 1] }, sheets };
  return { source: JSON.stringify(meet), expected: { ...expected, path: `/sheets/${at}${expected.path}` } };
}

function spoiled(draw: Draw, fault: Fault): Faulty {
  for (;;) {
    const sheet = competitionSheet(draw);
    const expected = fault(draw, sheet);
    if (expected === null) continue;
    const isScoring = expected.code === 'SCORING' || expected.path.startsWith('/scoring');
    if (draw.chance(10) && !isScoring) return inMeet(draw, sheet, expected);
    return { source: JSON.stringify(sheet), expected };
  }
}

/** Those that make a whole source; the others spoil a sheet of one competition. */
const WHOLE = { ...TEXT_FAULTS, ...COMBINED_FAULTS };

export const FAULT_NAMES = [CELL_FAULTS, DOCUMENT_FAULTS, WHOLE].flatMap((faults) => Object.keys(faults));

export function faulty(name: string): ReturnType<typeof drawn<Faulty>> {
  const whole = WHOLE[name];
  if (whole) return drawn((draw) => whole(draw));
  const fault = (CELL_FAULTS[name] ?? DOCUMENT_FAULTS[name]) as Fault;
  return drawn((draw) => spoiled(draw, fault));
}

/** Faults that leave a sheet in a state in which those after them can still be made, in that order. */
const TOGETHER = [
  'a trial after the cut',
  'a trial after retiring',
  'a trial of who did not start',
  'too many cells',
  'a cell after one not taken',
  'another unit',
  'a malformed cell',
  'an unknown key',
  'values that make no plan',
  'a scoring that is none',
];

/** Sheets of one competition with several things wrong with them. */
export const severalFaults = drawn((draw): Sheet => {
  const sheet = competitionSheet(draw);
  for (const name of TOGETHER) {
    if (draw.chance(40)) (CELL_FAULTS[name] ?? DOCUMENT_FAULTS[name])?.(draw, sheet);
  }
  return sheet;
});
