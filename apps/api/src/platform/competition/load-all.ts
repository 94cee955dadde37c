import {
  journal as journalStore,
  type CompetitionRow,
  type FoldedRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import { rostersOf } from '../roster/roster.js';
import { fold } from './kinds.js';
import { itemOf, type LoadedCompetition } from './loaded.js';
import { NO_PROCEEDINGS } from './proceedings.js';

/** Several competitions at once, in a fixed number of statements. `at` must be one moment. In the order of `rows`. */
export async function loadAll(
  at: Reads,
  rows: readonly CompetitionRow[],
  meets: ReadonlyMap<string, MeetRow>,
): Promise<LoadedCompetition[]> {
  const staged = rows.map((competition) => ({ competition, meet: meets.get(competition.meetId)! }));
  const rosters = await rostersOf(at, staged);
  const ids = rows.map(({ id }) => id);
  const entries = new Map<string, FoldedRow[]>(ids.map((id) => [id, []]));
  for (const entry of await journalStore.readAll(at, rows[0]!.organisationId, ids)) {
    entries.get(entry.competitionId)?.push(entry);
  }
  return staged.map(({ competition: row, meet }, index) => {
    const [roster, journal] = [rosters[index]!, entries.get(row.id) ?? []];
    const latest = journal.at(-1)?.recordedAt;
    const changedAt = latest === undefined ? null : new Date(latest);
    // No mark depends on them.
    const proceedings = NO_PROCEEDINGS;
    return { ...fold(row, roster, journal.map(itemOf)), row, meet, roster, changedAt, proceedings };
  });
}
