import {
  journal as journalStore,
  meets,
  proceedings as proceedingsStore,
  type CompetitionRow,
  type FoldedRow,
  type MeetRow,
  type Reads,
  type StoredProceedings,
} from '#persistence';
import type { AnyEntry, JournalItem } from '#rules';
import { rosterOf, type RosterLine } from '../roster/roster.js';
import { fold, type Folded } from './kinds.js';

/** What is stored of a competition at one version, beside its journal. */
export interface Stored {
  readonly row: CompetitionRow;
  readonly meet: MeetRow;
  /** The start list, in the order of competition. */
  readonly roster: readonly RosterLine[];
  /** When the latest entry of the journal was recorded. */
  readonly changedAt: Date | null;
  /** What was posted, signed and protested. */
  readonly proceedings: StoredProceedings;
}

/** One competition at one version: what is stored of it, and the state that its journal folds into. */
export type LoadedCompetition = Stored & Folded;
/** A throw or a horizontal jump. */
export type LoadedDistance = Extract<LoadedCompetition, { readonly kind: 'distance' }>;
/** A high jump or pole vault. */
export type LoadedVertical = Extract<LoadedCompetition, { readonly kind: 'vertical' }>;

/** Reads everything about a competition. `row` and the rest must be of one moment: hold the lock, or a snapshot. */
export async function loadCompetition(at: Reads, row: CompetitionRow): Promise<LoadedCompetition> {
  const meet = await meets.find(at, row.organisationId, row.meetId);
  if (!meet) throw new Error(`Competition ${row.id} has no meet.`);
  const roster = await rosterOf(at, { competition: row, meet });
  const entries = await journalStore.read(at, row.organisationId, row.id, 0);
  const folded = fold(row, roster, entries.map(itemOf));
  const latest = entries.at(-1)?.recordedAt;
  const changedAt = latest === undefined ? null : new Date(latest);
  const proceedings = await proceedingsStore.ofCompetition(at, row.organisationId, row.id);
  return { ...folded, row, meet, roster, changedAt, proceedings };
}

/** A stored entry as the rules read it. */
export function itemOf(row: Omit<FoldedRow, 'competitionId' | 'recordedAt'>): JournalItem<AnyEntry> {
  const entry: AnyEntry = { id: row.entryId, by: row.authority, actor: row.actor, ...row.body };
  return { entry, hold: row.verdict.standing === 'held' ? row.verdict.hold.code : null };
}
