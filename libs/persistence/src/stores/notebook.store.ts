import { In } from 'typeorm';
import { FaultChange } from '../entities/fault-change.entity.js';
import { NotebookEntry } from '../entities/notebook-entry.entity.js';
import type { FaultChangeRow, NotebookEntryRow } from '../notebook-rows.js';
import { execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewNotebookEntry = Omit<NotebookEntryRow, 'recordedAt'>;
export type NewFaultChange = Omit<FaultChangeRow, 'recordedAt'>;

/** Throws a `unique` violation of `notebook_entry_replaced_once` when what it replaces has been replaced. */
export async function insert(tx: Tx, row: NewNotebookEntry): Promise<void> {
  await managerOf(tx).insert(NotebookEntry, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<NotebookEntryRow | null> {
  return managerOf(at).findOneBy(NotebookEntry, { organisationId, id });
}

/** Everything ever said of these athletes, in the order of saying. */
export async function ofAthletes(
  at: Reads,
  organisationId: string,
  athleteIds: readonly string[],
): Promise<NotebookEntryRow[]> {
  return managerOf(at).find(NotebookEntry, {
    where: { organisationId, athleteId: In([...athleteIds]) },
    order: { recordedAt: 'ASC', id: 'ASC' },
  });
}

/** Takes the organisation's lock, so that changes of its vocabulary follow each other. */
export async function lockVocabulary(tx: Tx, organisationId: string): Promise<void> {
  await managerOf(tx).query(`SELECT 1 FROM organisation WHERE id = $1 FOR NO KEY UPDATE`, [organisationId]);
}

/** The caller holds the lock. */
export async function appendChange(tx: Tx, row: NewFaultChange): Promise<void> {
  await managerOf(tx).insert(FaultChange, row);
}

export async function faultChanges(at: Reads, organisationId: string): Promise<FaultChangeRow[]> {
  return managerOf(at).find(FaultChange, { where: { organisationId }, order: { sequence: 'ASC' } });
}

/**
 * A number that is another one whenever something was added that an athlete's numbers rest on: rows are only added,
 * and versions of competitions only rise. One index scan for each table.
 */
export async function dataVersion(at: Reads, organisationId: string, athleteId: string): Promise<string> {
  const [row] = await execute<{ version: string }>(at, DATA_VERSION, [organisationId, athleteId]);
  return row!.version;
}

const DATA_VERSION: Statement = {
  name: 'notebook_data_version',
  text: `
    SELECT concat_ws('.',
      (SELECT count(*) FROM practice_throw WHERE athlete_id = $2 AND organisation_id = $1),
      (SELECT count(*) FROM observation WHERE athlete_id = $2 AND organisation_id = $1),
      (SELECT count(*) FROM notebook_entry WHERE athlete_id = $2 AND organisation_id = $1),
      (SELECT coalesce(sum(version), 0) || '.' || count(*) || '.' || count(published_at) FROM competition
         JOIN competitor ON competitor.organisation_id = $1 AND competitor.competition_id = competition.id
         JOIN meet ON meet.organisation_id = $1 AND meet.id = meet_id
        WHERE competition.organisation_id = $1 AND competitor.athlete_id = $2),
      (SELECT coalesce(max(sequence), 0) FROM fault_change WHERE organisation_id = $1),
      (SELECT birth_date FROM athlete WHERE organisation_id = $1 AND id = $2)) AS version`,
};
