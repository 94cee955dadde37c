import { drawn, type Draw } from './draw.js';
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

export const FAULT_NAMES = [
  ...Object.keys(CELL_FAULTS),
  ...Object.keys(DOCUMENT_FAULTS),
  ...Object.keys(TEXT_FAULTS),
];

export function faulty(name: string): ReturnType<typeof drawn<Faulty>> {
  const text = TEXT_FAULTS[name];
  if (text) return drawn((draw) => text(draw));
  const fault = (CELL_FAULTS[name] ?? DOCUMENT_FAULTS[name]) as Fault;
  return drawn((draw) => spoiled(draw, fault));
}
