import { formatPoints } from '../quantities/fraction.js';
import type { ClubRow, Problem, ResultDocument, ResultRow } from '../result/result-document.js';
import { clubTable } from './club-table.js';
import type { Scoring } from './scoring.js';
import { scoreRows, type PlacedRow, type ScoredRow } from './shared-points.js';

/** `sectorline-meet-result/1`: what was counted from several sheets, or why it was not. */
export interface MeetResultDocument {
  readonly format: 'sectorline-meet-result/1';
  /** With points, without clubs; in the order of the sheets. */
  readonly results?: readonly ResultDocument[];
  readonly clubs?: readonly ClubRow[];
  readonly problems: readonly Problem[];
}

/** The result of one competition with what scoring adds to it. */
export interface ScoredResult {
  readonly results: readonly ResultRow[];
  readonly clubs: readonly ClubRow[];
}

/** The competitors of a card, as far as scoring looks at them. */
export type ClubMembers = readonly { readonly bib: string; readonly club: string | null }[];

/** Adds the points of every row and the table of the clubs of one competition. */
export function scoreResult(
  results: readonly ResultRow[],
  competitors: ClubMembers,
  scoring: Scoring,
): ScoredResult {
  const scored = scoredRows(results, competitors, scoring);
  return { results: withPoints(results, scored), clubs: clubTable([scored]) };
}

/** One counted competition of a meet. */
export interface MeetEvent {
  readonly document: ResultDocument;
  readonly competitors: ClubMembers;
}

/** Adds the points of every row of several competitions and one table of the clubs of all. */
export function scoreMeet(events: readonly MeetEvent[], scoring: Scoring): MeetResultDocument {
  const scored = events.map(({ document, competitors }) =>
    scoredRows(document.results ?? [], competitors, scoring),
  );
  const results = events.map(({ document }, index) => ({
    ...document,
    results: withPoints(document.results ?? [], scored[index] ?? []),
  }));
  return { format: 'sectorline-meet-result/1', results, clubs: clubTable(scored), problems: [] };
}

function scoredRows(results: readonly ResultRow[], competitors: ClubMembers, scoring: Scoring): ScoredRow[] {
  return scoreRows(placedRows(results, competitors), scoring);
}

/** The rows of a result with whom they score for, in its order. */
export function placedRows(results: readonly ResultRow[], competitors: ClubMembers): PlacedRow[] {
  const clubOf = new Map(competitors.map(({ bib, club }) => [bib, club]));
  return results.map(({ bib, place }) => ({ bib, place, club: clubOf.get(bib) ?? null }));
}

function withPoints(results: readonly ResultRow[], scored: readonly ScoredRow[]): ResultRow[] {
  const pointsOf = new Map(scored.map(({ bib, points }) => [bib, formatPoints(points)]));
  return results.map((row) => ({ ...row, points: pointsOf.get(row.bib) ?? '0' }));
}
