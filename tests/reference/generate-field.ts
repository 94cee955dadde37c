import type { Draw } from './draw.js';
import { feetMark, metricMark } from './marks.js';
import type { Competitor, ResultRow, Scoring, Sheet } from './shapes.js';

const CLUBS = ['Alder Vale', 'Brook End', 'Carrick', '\u{1F9A6} Otters', '\uFF21shton'];
const RULES = ['WA', 'NFHS', 'NCAA', 'USATF', 'WMA'];

/** How marks are drawn and written in one sheet: from few values, so that ties are frequent, or from many. */
export interface MarkSource {
  mark(draw: Draw): string;
  /** A mark so many steps above the lowest that can be drawn. */
  at(steps: number): string;
  spread: number;
}

export function markSource(draw: Draw, vertical: boolean): MarkSource {
  const write = draw.chance(30) ? feetMark : metricMark;
  const spread = draw.chance(70) ? 2 + draw.below(4) : 40;
  const low = draw.pick(vertical ? [95, 140, 399] : [1, 590, 1198, 5998, 9999, 47_700]);
  const at = (steps: number) => write(low + steps);
  return { spread, at, mark: (one) => at(one.below(spread)) };
}

/** Mostly small fields; some larger than the cuts of the rule sets. */
function fieldSize(draw: Draw): number {
  if (draw.chance(10)) return draw.below(3);
  return draw.chance(75) ? 3 + draw.below(4) : 7 + draw.below(7);
}

function competitor(draw: Draw, index: number): Competitor {
  const one: Competitor = { bib: draw.chance(5) ? `B ${index} é` : String(200 - index) };
  if (draw.chance(3)) one.name = `Name ${index}`;
  if (draw.chance(75)) one.club = draw.chance(3) ? '' : draw.pick(CLUBS);
  if (draw.chance(10)) one.flight = draw.pick(['A', 'B']);
  if (draw.chance(3)) one.implementGrams = 1000;
  if (draw.chance(8)) one.guest = draw.chance(90);
  const status = draw.below(100);
  if (status >= 95) one.status = 'DNS';
  else if (status >= 87) one.status = 'DQ';
  return one;
}

/** A sheet with its competitors before anybody has had a trial. */
export function emptySheet(draw: Draw, events: readonly string[]): Sheet {
  const sheet: Sheet = {
    format: 'sectorline-sheet/1',
    rules: draw.pick(RULES),
    event: draw.pick(events),
    competitors: Array.from({ length: fieldSize(draw) }, (_, index) => competitor(draw, index)),
  };
  if (draw.chance(15)) sheet.indoor = draw.chance(70);
  if (draw.chance(5)) sheet.category = { sex: draw.pick(['W', 'M', 'X']) };
  if (draw.chance(20)) sheet.stage = 'qualification';
  else if (draw.chance(10)) sheet.stage = 'final';
  return sheet;
}

/** Pads with trials not taken, or leaves an empty series out: both say the same. */
export function finishSeries(draw: Draw, sheet: Sheet, most: number): void {
  for (const one of sheet.competitors) {
    const series = one.series ?? [];
    if (series.length === 0 && draw.chance(30)) {
      delete one.series;
      continue;
    }
    one.series = series;
    while (series.length < most && draw.chance(8)) series.push(null);
  }
}

/** The values at the edges of what a scoring may hold are among them. */
export function scoring(draw: Draw): Scoring {
  const tables = [
    [10, 8, 6, 5, 4, 3, 2, 1],
    [5, 3, 1],
    [7.5, 5, 2.5],
    [0.001, 10_000, 0.125],
    [1, 0, 2],
    [],
    [7],
  ];
  const made: Scoring = { places: draw.pick(tables) };
  if (draw.chance(70)) made.scorersPerClub = draw.pick([1, 2, 3, null]);
  if (draw.chance(70)) made.nonScorers = draw.pick(['out', 'hold']);
  return made;
}

/** Lets a card say what it says: mostly what was counted, sometimes another place or mark. */
export function writeCard(draw: Draw, sheet: Sheet, rows: readonly ResultRow[], marks: MarkSource): void {
  for (const one of sheet.competitors) {
    const row = rows.find((other) => other.bib === one.bib);
    if (!row || row.place === null || draw.chance(30)) continue;
    one.written = {};
    if (draw.chance(90)) one.written.place = draw.chance(85) ? row.place : 1 + draw.below(9);
    if (row.mark !== 'O' && draw.chance(80)) {
      one.written.mark = draw.chance(85) ? (row.mark as string) : marks.mark(draw);
    }
  }
}
