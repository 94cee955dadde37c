import {
  journal as journalStore,
  meets,
  type CompetitionRow,
  type JournalRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import { restoreCompetition, type CompetitionState, type Entry, type JournalItem } from '#rules';
import { rosterOf, type RosterLine } from '../roster/roster.js';
import { setupOf } from './setup-of.js';

/** One competition at one version: what is stored of it, and the state that its journal folds into. */
export interface LoadedCompetition {
  readonly row: CompetitionRow;
  readonly meet: MeetRow;
  /** The start list, in the order of competition. */
  readonly roster: readonly RosterLine[];
  readonly state: CompetitionState;
  /** When the latest entry of the journal was recorded. */
  readonly changedAt: Date | null;
}

/** Reads everything about a competition. `row` and the rest must be of one moment: hold the lock, or a snapshot. */
export async function loadCompetition(at: Reads, row: CompetitionRow): Promise<LoadedCompetition> {
  const meet = await meets.find(at, row.organisationId, row.meetId);
  if (!meet) throw new Error(`Competition ${row.id} has no meet.`);
  const roster = await rosterOf(at, { competition: row, meet });
  const entries = await journalStore.read(at, row.organisationId, row.id, 0);
  const state = restoreCompetition(setupOf(row, roster), entries.map(itemOf));
  const latest = entries.at(-1)?.recordedAt;
  return { row, meet, roster, state, changedAt: latest === undefined ? null : new Date(latest) };
}

/** A stored entry as the rules read it. */
export function itemOf(row: JournalRow): JournalItem {
  const entry = { id: row.entryId, by: row.authority, actor: row.actor, ...row.body } as Entry;
  return { entry, hold: row.verdict.standing === 'held' ? row.verdict.hold.code : null };
}
