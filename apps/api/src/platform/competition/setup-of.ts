import type { CompetitionRow, CompetitorRow, VerticalTerms } from '#persistence';
import {
  isDistanceEvent,
  resolvePlan,
  ruleSet,
  type CompetitionSetup,
  type VerticalSetup,
  type VerticalSetupCompetitor,
} from '#rules';

/*
 * What the rules need to know of a stored competition. Names are left out: nothing that is decided depends on them.
 * Both throw when what is stored makes no competition, which the checks on the way in rule out.
 */

/** One line of a start list, as far as anything is decided by it. */
export interface SetupLine {
  readonly competitor: Pick<
    CompetitorRow,
    'id' | 'bib' | 'flight' | 'guest' | 'implementGrams' | 'isUnmatched'
  >;
  readonly club: string | null;
}

/** Of a throw or a horizontal jump. */
export function distanceSetupOf(row: CompetitionRow, roster: readonly SetupLine[]): CompetitionSetup {
  const { rules, edition, event, indoor, stage, qualifying, unit } = row;
  if (!isDistanceEvent(event)) throw new Error(`Competition ${row.id} is not one of distance: ${event}.`);
  const resolved = resolvePlan(ruleSet(rules, edition), stage, row.plan);
  if (!resolved.ok) throw new Error(`Competition ${row.id} has a stored plan that makes no plan.`);
  const competitors = roster.map((line) => ({
    ...setupCompetitor(line),
    implementGrams: line.competitor.implementGrams ?? row.implementGrams,
  }));
  return { rules, edition, event, indoor, stage, qualifying, plan: resolved.plan, unit, competitors };
}

/** Of a high jump or pole vault, which has terms instead of a plan. */
export function verticalSetupOf(
  row: CompetitionRow,
  { heights, combined, passGivesUp, tieForFirst }: VerticalTerms,
  roster: readonly SetupLine[],
): VerticalSetup {
  const { rules, edition, event, indoor, stage, qualifying, unit } = row;
  if (isDistanceEvent(event)) throw new Error(`Competition ${row.id} has heights and no bar: ${event}.`);
  const head = { rules, edition, event, indoor, stage, qualifying, unit };
  const competitors = roster.map(setupCompetitor);
  return { ...head, heights, combined, passGivesUp, tieForFirst, competitors };
}

function setupCompetitor({ competitor, club }: SetupLine): VerticalSetupCompetitor {
  const { id: key, bib, flight, guest, isUnmatched } = competitor;
  return { key, bib, name: null, club, flight, guest, ...(isUnmatched && { unmatched: true }) };
}
