import { combinedSheet } from './generate-combined.js';
import { drawn, type Draw } from './draw.js';
import { scoring, writeCard } from './generate-field.js';
import { horizontalSheet } from './generate-horizontal.js';
import { verticalSheet } from './generate-vertical.js';
import { metricMark } from './marks.js';
import { referenceResult } from './result.js';
import type { AnySheet, MeetSheet, ResultRow, Sheet } from './shapes.js';

/** A valid sheet of one competition, without a scoring. */
export function competitionSheet(draw: Draw): Sheet {
  const { sheet, marks } = draw.chance(30) ? verticalSheet(draw) : horizontalSheet(draw);
  if (draw.chance(12))
    writeCard(draw, sheet, (referenceResult(sheet) as { results: ResultRow[] }).results, marks);
  return sheet;
}

export function meetSheet(draw: Draw): MeetSheet {
  const sheets = Array.from({ length: draw.below(4) }, () => competitionSheet(draw));
  return { format: 'sectorline-meet/1', scoring: scoring(draw), sheets };
}

/** The same sheet with its keys the other way round: their order says nothing. */
function turned<T extends object>(sheet: T): T {
  return Object.fromEntries(Object.entries(sheet).reverse()) as T;
}

/** A valid sheet of any of the three kinds: mostly one competition. */
export function generateSheet(draw: Draw): AnySheet {
  const kind = draw.below(100);
  if (kind >= 96) return meetSheet(draw);
  if (kind >= 90) return combinedSheet(draw);
  const sheet = competitionSheet(draw);
  if (draw.chance(30)) sheet.scoring = scoring(draw);
  return draw.chance(10) ? turned(sheet) : sheet;
}

/** Valid sheets of all kinds. */
export const sheets = drawn(generateSheet);

/** The cells of a competition of six rounds in which nobody is cut, with few different marks. */
function rankingSeries(draw: Draw): string[][] {
  const marks = Array.from({ length: 1 + draw.below(5) }, (_, step) => metricMark(1998 + step));
  const cells = ['X', '-', ...(draw.chance(30) ? ['O'] : []), ...marks, ...marks];
  return Array.from({ length: draw.below(10) }, () =>
    Array.from({ length: draw.below(7) }, () => draw.pick(cells)),
  );
}

export const rankings = drawn(rankingSeries);
