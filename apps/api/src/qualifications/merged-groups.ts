import type { CompetitionRow } from '#persistence';
import {
  formatMark,
  mergeProblems,
  qualifyingReason,
  qualifyingTable,
  ruleSet,
  verticalQualifyingTable,
  type Card,
  type MergeProblem,
  type QualifyingOutcome,
  type QualifyingRow,
  type QualifyingTable as MergedTable,
  type VerticalCard,
} from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { RosterLine } from '../platform/roster/roster.js';
import type { QualifyingLine, QualifyingTable } from './qualifications.types.js';

/** The groups of one qualification with their terms. */
export interface Merged {
  readonly groups: readonly LoadedCompetition[];
  readonly standard: string;
  readonly fill: number;
  readonly table: MergedTable;
}

/** Everything that keeps competitions from being groups of one qualification; `group`: which of them. */
export function groupProblems(groups: readonly LoadedCompetition[]): MergeProblem[] {
  const fill = groups[0]?.row.qualifying?.fill ?? 0;
  const problems = mergeProblems(
    groups.map(({ state }) => state.card),
    fill,
  );
  const others = groups.flatMap(({ row }, group): MergeProblem[] => {
    const own = row.qualifying?.fill;
    if (own === undefined || own === fill) return [];
    const message = `fill: group ${group + 1} has ${own}, the first group ${fill}. Correct one of them.`;
    return [{ group, code: 'DIFFERS', field: 'fill', message }];
  });
  return [...problems, ...others];
}

/** Throws when the groups do not agree: what was set up was checked, and the terms of a competition stay. */
export function mergedOf(groups: readonly LoadedCompetition[]): Merged {
  const first = groups[0]!.row;
  const { standard, fill } = first.qualifying!;
  const outcome = outcomeOf(groups, fill);
  if (!outcome.ok) throw new Error(`The groups make no qualification: ${outcome.problems[0]?.message ?? ''}`);
  return { groups, standard: formatMark(standard, first.unit), fill, table: outcome.table };
}

function outcomeOf(groups: readonly LoadedCompetition[], fill: number): QualifyingOutcome {
  const cards: Card[] = [];
  const verticalCards: VerticalCard[] = [];
  for (const group of groups) {
    if (group.kind === 'vertical') verticalCards.push(group.state.card);
    else cards.push(group.state.card);
  }
  return verticalCards.length > 0
    ? verticalQualifyingTable(verticalCards, fill)
    : qualifyingTable(cards, fill);
}

/** The groups whose result is not official. */
export function openGroups(groups: readonly LoadedCompetition[]): LoadedCompetition[] {
  return groups.filter(({ row }) => row.status !== 'official');
}

/** Whose row it is, with all that is known of him. */
export function rosterLineOf({ groups }: Merged, { group, row }: QualifyingRow): RosterLine {
  return groups[group]!.roster.find(({ competitor }) => competitor.bib === row.bib)!;
}

export function qualifyingView(merged: Merged): QualifyingTable {
  const { groups, table } = merged;
  return {
    isProvisional: openGroups(groups).length > 0,
    isDisputed: groups.some(({ state }) => state.questions.length > 0),
    lines: table.rows.map((row) => lineOf(merged, row)),
    byStandard: table.byStandard,
    byPerformance: table.byPerformance,
    rule: ruleOf(groups[0]!.row),
  };
}

export function ruleOf({ rules, edition }: CompetitionRow): string {
  return ruleSet(rules, edition).qualificationPlan.cite.rule;
}

function lineOf(merged: Merged, line: QualifyingRow): QualifyingLine {
  const { table, standard, fill } = merged;
  const { row, group } = line;
  const { competitor, displayName, club } = rosterLineOf(merged, line);
  return {
    competitor: globalId('Competitor', competitor.id),
    group: group + 1,
    bib: row.bib,
    name: displayName,
    club,
    place: row.place,
    isEqual: row.equal,
    mark: row.mark,
    wind: row.wind,
    status: row.status,
    qualified: row.qualified,
    isThrough: row.qualified !== null,
    isLevelForLast: table.levelForLast.includes(line),
    reason: qualifyingReason(table, line, { standard, fill }),
  };
}
