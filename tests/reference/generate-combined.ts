import { eventsOf, isRun, TABLES } from './combined-points.js';
import type { Draw } from './draw.js';
import { metricMark } from './marks.js';
import type { CombinedRow, CombinedSheet } from './shapes.js';

/** From far better to far worse than anybody is: hundredths of a second, or centimetres. */
const RANGE: Record<string, [number, number]> = {
  '60m': [550, 1300],
  '100m': [900, 2200],
  '200m': [1900, 4400],
  '400m': [4200, 9300],
  '800m': [10_000, 25_600],
  '1000m': [13_000, 31_000],
  '1500m': [20_000, 54_000],
  '60mh': [700, 1800],
  '100mh': [1150, 2800],
  '110mh': [1200, 3000],
  'high-jump': [60, 260],
  'pole-vault': [80, 650],
  'long-jump': [180, 950],
  shot: [100, 2400],
  discus: [200, 8000],
  javelin: [300, 10_000],
};

function time(draw: Draw, total: number, byHand: boolean): string {
  const decimals = byHand && draw.chance(60) ? 1 : 2;
  const seconds = Math.floor(total / 100);
  const parts = String(total % 100)
    .padStart(2, '0')
    .slice(0, decimals);
  if (seconds < 60) return `${seconds}.${parts}`;
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}.${parts}`;
}

function mark(draw: Draw, event: string, byHand: boolean): string | null {
  if (draw.chance(4)) return null;
  const [from, to] = RANGE[event] as [number, number];
  const value = from + draw.below(to - from);
  return isRun(event) ? time(draw, value, byHand) : metricMark(value);
}

/** A valid combined events sheet; equal rows are frequent, so that places are shared. */
export function combinedSheet(draw: Draw): CombinedSheet {
  const sheet: CombinedSheet = {
    format: 'sectorline-combined/1',
    table: draw.pick(Object.keys(TABLES)),
    rows: [],
  };
  if (draw.chance(50)) sheet.timing = draw.pick(['electronic', 'hand']);
  const events = eventsOf(sheet.table);
  const count = draw.below(5);
  for (let index = 0; index < count; index += 1) {
    const row: CombinedRow = { bib: String(300 - index), marks: {} };
    const like = index > 0 && draw.chance(20) ? sheet.rows[index - 1] : undefined;
    const stopsAt = draw.chance(10) ? draw.below(events.length) : Infinity;
    events.forEach((event, at) => {
      if (at >= stopsAt) row.marks[event] = 'DNS';
      else row.marks[event] = like?.marks[event] ?? mark(draw, event, sheet.timing === 'hand');
    });
    sheet.rows.push(row);
  }
  return sheet;
}
