import type { CombinedCard, CombinedCompetitor, CombinedMark } from './combined-card.js';
import type { CombinedRow } from './combined-result.js';
import { handTimingAddition, type Timing } from './combined-mark.js';
import { rankTotals, type CombinedDecision, type CombinedTies } from './combined-ranking.js';
import { COMBINED_TABLES, type CombinedTable } from './combined-tables.js';
import { pointsFunction, type PointsFunction } from './exact-points.js';
import { FORMULAS, type CombinedEventCode, type Formula, type ScoringSex } from './scoring-table.js';

/** Marks of a combined events competition, whatever its programme. */
export interface CombinedField {
  readonly table: CombinedTable;
  readonly timing: Timing;
  /** Events timed by hand where the others were not: one watch system failed. */
  readonly timedByHand?: readonly CombinedEventCode[];
  /** In the original order. */
  readonly rows: readonly CombinedCompetitor[];
}

/** A row of the result with what separates it from the one placed just before; `null` without a place. */
export interface CountedCombinedRow {
  readonly row: CombinedRow;
  readonly decidedBy: CombinedDecision | null;
}

/** Counts a combined events competition. Equal totals share the place (the newer text, from memory). */
export function countCombined(card: CombinedCard): readonly CombinedRow[] {
  const field = { table: COMBINED_TABLES[card.table], timing: card.timing, rows: card.rows };
  return countCombinedField(field).map(({ row }) => row);
}

/**
 * Counts a combined events competition of any programme. Who did not start an event is out of it (from memory): after
 * the others, without a place, in the original order. No valid mark, or no finish, is worth nothing and ends nothing.
 */
export function countCombinedField(
  field: CombinedField,
  ties: CombinedTies = 'stay',
): readonly CountedCombinedRow[] {
  const pointsOf = eventPointsOf(field);
  const totals = field.rows.map((competitor) => totalOf(competitor, pointsOf));
  const ranked = rankTotals(
    totals.filter(({ competitor }) => !competitor.marks.includes('DNS')),
    ties,
  );
  const out = totals.filter(({ competitor }) => competitor.marks.includes('DNS'));
  return [
    ...ranked.map(({ row, place, equal, decidedBy }) => ({
      row: rowOf(row, field.table, { place, equal, status: null }),
      decidedBy,
    })),
    ...out.map((row) => ({
      row: rowOf(row, field.table, { place: null, equal: false, status: 'DNF' }),
      decidedBy: null,
    })),
  ];
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
  return POINTS[sex][event]?.(timedBy(timing, event, hundredths)) ?? null;
}

type Scorers = Readonly<Partial<Record<CombinedEventCode, PointsFunction>>>;

const POINTS: Readonly<Record<ScoringSex, Scorers>> = { M: scorers('M'), W: scorers('W') };

function scorers(sex: ScoringSex): Scorers {
  const formulas = Object.entries(FORMULAS[sex]) as [CombinedEventCode, Formula][];
  return Object.fromEntries(formulas.map(([event, formula]) => [event, pointsFunction(event, formula)]));
}

/** The points of a mark in the event at a position of the programme. */
export type EventPoints = (mark: CombinedMark | undefined, index: number) => number;

/** @throws RangeError for an event that no formula scores (a mistake of the program). */
export function eventPointsOf({ table, timing, timedByHand = [] }: CombinedField): EventPoints {
  const functions = table.events.map((event): PointsFunction => {
    const points = POINTS[table.scoredBy][event];
    if (!points) throw new RangeError(`No formula scores ${event}.`);
    const timed = timedByHand.includes(event) ? 'hand' : timing;
    return (hundredths) => points(timedBy(timed, event, hundredths));
  });
  return (mark, index) => (typeof mark === 'number' ? (functions[index]?.(mark) ?? 0) : 0);
}

function timedBy(timing: Timing, event: CombinedEventCode, hundredths: number): number {
  return timing === 'hand' ? hundredths + handTimingAddition(event) : hundredths;
}

interface CompetitorTotal {
  readonly competitor: CombinedCompetitor;
  readonly points: number;
  readonly byEvent: readonly number[];
}

function totalOf(competitor: CombinedCompetitor, pointsOf: EventPoints): CompetitorTotal {
  const byEvent = competitor.marks.map(pointsOf);
  return { competitor, points: byEvent.reduce((sum, one) => sum + one, 0), byEvent };
}

function rowOf(
  { competitor, points, byEvent }: CompetitorTotal,
  table: CombinedTable,
  standing: Pick<CombinedRow, 'place' | 'equal' | 'status'>,
): CombinedRow {
  const eventPoints = Object.fromEntries(table.events.map((event, index) => [event, byEvent[index] ?? 0]));
  return { bib: competitor.bib, ...standing, points, eventPoints };
}
