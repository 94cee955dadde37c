import type { CompetitionRow } from '#persistence';
import { isDistanceEvent, resolvePlan, ruleSet, type CompetitionSetup } from '#rules';
import type { RosterLine } from '../roster/roster.js';

/**
 * What the rules need to know of a stored competition. Names are left out: nothing that is decided depends on them.
 * Throws when what is stored makes no competition, which the checks on the way in rule out.
 */
export function setupOf(row: CompetitionRow, roster: readonly RosterLine[]): CompetitionSetup {
  const { rules, edition, event, indoor, stage, qualifying, unit } = row;
  if (!isDistanceEvent(event)) throw new Error(`Competition ${row.id} is not one of distance: ${event}.`);
  const resolved = resolvePlan(ruleSet(rules, edition), stage, row.plan);
  if (!resolved.ok) throw new Error(`Competition ${row.id} has a stored plan that makes no plan.`);
  return {
    rules,
    edition,
    event,
    indoor,
    stage,
    qualifying,
    plan: resolved.plan,
    unit,
    competitors: roster.map(({ competitor, club }) => ({
      key: competitor.id,
      bib: competitor.bib,
      name: null,
      club,
      flight: competitor.flight,
      guest: competitor.guest,
      implementGrams: competitor.implementGrams ?? row.implementGrams,
    })),
  };
}
