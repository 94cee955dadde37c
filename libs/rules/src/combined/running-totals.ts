import type { CombinedCompetitor } from './combined-card.js';
import { rankTotals, type CombinedTies } from './combined-ranking.js';
import { eventPointsOf, type CombinedField } from './count-combined.js';
import type { CombinedEventCode } from './scoring-table.js';

/** How a combined events competition stands after one of its events. */
export interface CombinedStage {
  readonly event: CombinedEventCode;
  /** Everybody who is still in the competition has a mark, or none to come, in this event. */
  readonly complete: boolean;
  /** By total so far; then who is out, in the original order. */
  readonly rows: readonly CombinedStageRow[];
}

export interface CombinedStageRow {
  readonly bib: string;
  /** Points of this event; `null`: the mark is to come. */
  readonly points: number | null;
  /** Points of all events up to this one. */
  readonly total: number;
  /** Among those still in it; `null`: out, an event was not started. */
  readonly place: number | null;
  readonly equal: boolean;
}

/**
 * The totals after each event that has begun. Marks that are to come are left away at the end of a competitor's
 * marks; they count for nothing yet. Places are those of the result, were it to end there.
 */
export function runningTotals(field: CombinedField, ties: CombinedTies = 'stay'): CombinedStage[] {
  const begun = Math.max(0, ...field.rows.map(({ marks }) => marks.length));
  return field.table.events.slice(0, begun).map((event, index) => stageAfter(field, event, index, ties));
}

function stageAfter(
  field: CombinedField,
  event: CombinedEventCode,
  index: number,
  ties: CombinedTies,
): CombinedStage {
  const pointsOf = eventPointsOf(field);
  const totals = field.rows.map((competitor) => {
    const byEvent = competitor.marks.slice(0, index + 1).map(pointsOf);
    return { competitor, byEvent, points: byEvent.reduce((sum, one) => sum + one, 0) };
  });
  const isIn = ({ competitor }: { competitor: CombinedCompetitor }): boolean =>
    !competitor.marks.slice(0, index + 1).includes('DNS');
  const rowOf = (total: (typeof totals)[number], place: number | null, equal: boolean): CombinedStageRow => ({
    bib: total.competitor.bib,
    points: total.competitor.marks.length > index ? (total.byEvent[index] ?? 0) : null,
    total: total.points,
    place,
    equal,
  });
  const ranked = rankTotals(totals.filter(isIn), ties);
  return {
    event,
    complete: ranked.every(({ row }) => row.competitor.marks.length > index),
    rows: [
      ...ranked.map(({ row, place, equal }) => rowOf(row, place, equal)),
      ...totals.filter((total) => !isIn(total)).map((total) => rowOf(total, null, false)),
    ],
  };
}
