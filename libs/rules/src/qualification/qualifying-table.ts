import type { Card } from '../card.js';
import { drawFlights, type DrawOutcome } from '../draw/draw.js';
import { countRows } from '../result/count-card.js';
import type { ResultRow } from '../result/result-document.js';
import { countVertical } from '../vertical/count-vertical.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import { mergeGroups, mergeVerticalGroups, type Origin } from './merge-groups.js';
import { mergeProblems, type MergeProblem } from './merge-problems.js';

/** A competitor's row over all groups: the place is the one among everybody, the bib the one in the group. */
export interface QualifyingRow {
  readonly group: number;
  readonly row: ResultRow;
}

export interface QualifyingTable {
  /** As in a result: placed first, then without a mark, disqualified, not started, guests. */
  readonly rows: readonly QualifyingRow[];
  /** Who goes on to the final: by place, then who was admitted without one. */
  readonly finalists: readonly QualifyingRow[];
  /** How many reached the standard. */
  readonly byStandard: number;
  /** How many were filled up with. */
  readonly byPerformance: number;
  /** Who share the last place that goes on, when that takes more on than were wanted; else empty. */
  readonly levelForLast: readonly QualifyingRow[];
}

export type QualifyingOutcome =
  | { readonly ok: true; readonly table: QualifyingTable }
  | { readonly ok: false; readonly problems: readonly MergeProblem[] };

/**
 * Who goes on from a qualification in groups: everybody at or over the standard (`Q`); if they are fewer than `fill`
 * over all groups, the best of the others, whatever their group (`q`), ties broken as in a final, and all who are
 * still level with the last of them (World Athletics TR25.9 to 25.16, from memory). One group counts as it does alone.
 */
export function qualifyingTable(groups: readonly Card[], fill: number): QualifyingOutcome {
  const problems = mergeProblems(groups, fill);
  if (problems.length > 0 || !isFilled(groups)) return { ok: false, problems };
  const { card, origins } = mergeGroups(groups, fill);
  return {
    ok: true,
    table: tableOf(
      countRows(card).map(({ row }) => row),
      origins,
      fill,
    ),
  };
}

/** As {@link qualifyingTable}, for high jump and pole vault; the heights of the groups need not be the same. */
export function verticalQualifyingTable(groups: readonly VerticalCard[], fill: number): QualifyingOutcome {
  const problems = mergeProblems(groups, fill);
  if (problems.length > 0 || !isFilled(groups)) return { ok: false, problems };
  const { card, origins } = mergeVerticalGroups(groups, fill);
  return { ok: true, table: tableOf(countVertical(card).results, origins, fill) };
}

/**
 * The order of the final, drawn anew (World Athletics TR25.5, read in an older text). The bibs of the final must
 * differ; two groups with the same bib are told as a duplicate.
 */
export function drawFinal(table: QualifyingTable, seed: string): DrawOutcome {
  const entries = table.finalists.map(({ row }) => ({ key: row.bib, seedMark: null, club: null }));
  return drawFlights(entries, { seed, method: 'lot', flights: 1, clubmatesApart: false });
}

function isFilled<C>(groups: readonly C[]): groups is readonly [C, ...C[]] {
  return groups.length > 0;
}

/** `merged`: rows whose bibs are positions. */
function tableOf(merged: readonly ResultRow[], origins: readonly Origin[], fill: number): QualifyingTable {
  const rows = merged.map((row): QualifyingRow => {
    const { group, bib } = origins[Number(row.bib)]!;
    return { group, row: { ...row, bib } };
  });
  const [byStandard, filled] = [qualifiedAs('Q', rows), qualifiedAs('q', rows)];
  const lastPlace = filled.at(-1)?.row.place;
  return {
    rows,
    finalists: rows.filter(({ row }) => row.qualified !== null),
    byStandard: byStandard.length,
    byPerformance: filled.length,
    levelForLast:
      byStandard.length + filled.length > fill ? filled.filter(({ row }) => row.place === lastPlace) : [],
  };
}

function qualifiedAs(qualified: ResultRow['qualified'], rows: readonly QualifyingRow[]): QualifyingRow[] {
  return rows.filter(({ row }) => row.qualified === qualified);
}
