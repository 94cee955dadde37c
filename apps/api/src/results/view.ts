import type { ResultRow } from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { RosterLine } from '../platform/roster/roster.js';
import type { TableRow } from './results.types.js';

/** Whole names for those who work at the meet, for everybody else what the meet shows. */
export type Audience = 'public' | 'crew';

/** One competition as one audience sees it. */
export interface View<L extends LoadedCompetition = LoadedCompetition> {
  readonly loaded: L;
  readonly audience: Audience;
}

export function nameOf({ audience }: View, line: RosterLine): string {
  return audience === 'crew' ? (line.name ?? line.displayName) : line.displayName;
}

/** The id of a competitor, as the API shows it, by bib. */
export function idsByBib({ roster }: LoadedCompetition): (bib: string) => string {
  const ids = new Map(
    roster.map(({ competitor }) => [competitor.bib, globalId('Competitor', competitor.id)]),
  );
  return (bib) => ids.get(bib)!;
}

/** Why somebody stands where he stands, in words and by which rule. */
export interface Because {
  readonly reason: string;
  readonly rule: string | null;
  /** Has no mark yet and a trial to come: not without a mark, only without one so far. */
  readonly isWaiting: boolean;
}

/** What rows of every kind of table have. */
export function rowHead(
  view: View,
  line: RosterLine,
  { windLegal, equal, wind, ...row }: ResultRow,
  { reason, rule, isWaiting }: Because,
): Omit<TableRow, 'series' | 'vertical'> {
  return {
    in: view.loaded.row,
    competitor: globalId('Competitor', line.competitor.id),
    bib: row.bib,
    name: nameOf(view, line),
    club: line.club,
    place: row.place,
    isEqual: equal,
    mark: row.mark,
    wind,
    isWindLegal: windLegal,
    windLegalMark: row.windLegalMark,
    status: isWaiting ? null : row.status,
    decidedBy: row.decidedBy,
    reason,
    reasonRule: rule,
    qualified: row.qualified,
  };
}
