import type { CombinedCard, CombinedCompetitor, CombinedMark } from './combined-card.js';
import type { CombinedRow } from './combined-result.js';
import { handTimingAddition, type Timing } from './combined-mark.js';
import { COMBINED_TABLES, type CombinedTable } from './combined-tables.js';
import { pointsFunction, type PointsFunction } from './exact-points.js';
import { FORMULAS, type CombinedEventCode, type ScoringSex } from './scoring-table.js';

/**
 * Counts a combined events competition. Equal totals share the place (the newer text, from memory; older books broke
 * such ties). Who did not start an event is out of it (from memory).
 */
export function countCombined(card: CombinedCard): readonly CombinedRow[] {
  const table = COMBINED_TABLES[card.table];
  const pointsOf = eventPointsOf(table, card.timing);
  const rows = card.rows.map((competitor) => unplacedRow(competitor, table, pointsOf));
  const finished = rows.filter((row) => row.status === null).sort((a, b) => b.points - a.points);
  return [...placed(finished), ...rows.filter((row) => row.status !== null)];
}

/**
 * The points of one performance in whole hundredths; `null` when the tables do not score the event for that sex.
 * A time by hand is first made one that the tables score.
 */
export function combinedPoints(
  sex: ScoringSex,
  event: CombinedEventCode,
  hundredths: number,
  timing: Timing = 'electronic',
): number | null {
  const formula = FORMULAS[sex][event];
  return formula ? pointsFunction(event, formula)(timedBy(timing, event, hundredths)) : null;
}

type EventPoints = (mark: CombinedMark, index: number) => number;

function eventPointsOf(table: CombinedTable, timing: Timing): EventPoints {
  const functions = table.events.map((event): PointsFunction => {
    const formula = FORMULAS[table.scoredBy][event];
    if (!formula) throw new RangeError(`No formula scores ${event}.`);
    const points = pointsFunction(event, formula);
    return (hundredths) => points(timedBy(timing, event, hundredths));
  });
  return (mark, index) => (typeof mark === 'number' ? (functions[index]?.(mark) ?? 0) : 0);
}

function timedBy(timing: Timing, event: CombinedEventCode, hundredths: number): number {
  return timing === 'hand' ? hundredths + handTimingAddition(event) : hundredths;
}

function unplacedRow(
  { bib, marks }: CombinedCompetitor,
  table: CombinedTable,
  pointsOf: EventPoints,
): CombinedRow {
  const points = marks.map(pointsOf);
  return {
    bib,
    place: null,
    equal: false,
    status: marks.includes('DNS') ? 'DNF' : null,
    points: points.reduce((sum, one) => sum + one, 0),
    eventPoints: Object.fromEntries(table.events.map((event, index) => [event, points[index] ?? 0])),
  };
}

/** `rows`: best first. */
function placed(rows: readonly CombinedRow[]): CombinedRow[] {
  const sharing = new Map<number, number>();
  for (const { points } of rows) sharing.set(points, (sharing.get(points) ?? 0) + 1);
  let ahead = 0;
  let [place, total] = [0, -1];
  return rows.map((row) => {
    if (row.points !== total) [place, total] = [ahead + 1, row.points];
    ahead += 1;
    return { ...row, place, equal: (sharing.get(row.points) ?? 0) > 1 };
  });
}
