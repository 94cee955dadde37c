import type { CompetitionRow } from '#persistence';
import {
  apply,
  applyVertical,
  restoreCompetition,
  restoreVertical,
  type AnyEntry,
  type CompetitionState,
  type Entry,
  type JournalItem,
  type Verdict,
  type VerticalEntry,
  type VerticalState,
} from '#rules';
import type { RosterLine } from '../roster/roster.js';
import { distanceSetupOf, verticalSetupOf } from './setup-of.js';

/*
 * The two kinds of competition part here: `distance` (throws and horizontal jumps, in rounds) and `vertical` (high
 * jump and pole vault, at heights). A journal holds entries of its own kind and those that are alike in both; what
 * comes from outside is looked at before it is decided (`bodyIn` of the recording), what is stored has been.
 */

/** What the journal of a competition folds into. */
export type Folded =
  | { readonly kind: 'distance'; readonly state: CompetitionState }
  | { readonly kind: 'vertical'; readonly state: VerticalState };

/** The state that a stored journal describes. */
export function fold(
  row: CompetitionRow,
  roster: readonly RosterLine[],
  journal: readonly JournalItem<AnyEntry>[],
): Folded {
  if (row.vertical) {
    const setup = verticalSetupOf(row, row.vertical, roster);
    return { kind: 'vertical', state: restoreVertical(setup, journal as JournalItem<VerticalEntry>[]) };
  }
  const setup = distanceSetupOf(row, roster);
  return { kind: 'distance', state: restoreCompetition(setup, journal as JournalItem<Entry>[]) };
}

/** Decides one entry by the rules; gives the same state back when it is refused. */
export function decideIn(
  folded: Folded,
  entry: AnyEntry,
): { readonly after: Folded; readonly verdict: Verdict } {
  if (folded.kind === 'vertical') {
    const { state, verdict } = applyVertical(folded.state, entry as VerticalEntry);
    return { after: { kind: 'vertical', state }, verdict };
  }
  const { state, verdict } = apply(folded.state, entry as Entry);
  return { after: { kind: 'distance', state }, verdict };
}
