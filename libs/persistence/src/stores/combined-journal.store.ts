import { In, MoreThan } from 'typeorm';
import { CombinedEntry } from '../entities/combined-entry.entity.js';
import { checkedFirst, isSequence, pageOf, readCursor, type Page, type PageRequest } from '../page.js';
import type { CombinedEntryRow } from '../combined-rows.js';
import { execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';
import type { Appended } from './journal.store.js';

/** The database gives an entry its sequence and its time. */
export type NewCombinedEntry = Omit<CombinedEntryRow, 'sequence' | 'recordedAt'>;

/**
 * Appends one entry and counts it in the combined event, in one statement. The caller holds the lock. Throws a
 * `unique` violation of `combined_entry_id_unique` when an entry of that id is there already.
 */
export async function append(tx: Tx, entry: NewCombinedEntry): Promise<Appended> {
  const [row] = await execute<Appended>(tx, APPEND, [
    entry.organisationId,
    entry.combinedEventId,
    entry.entryId,
    entry.kind,
    JSON.stringify(entry.body),
    entry.standing,
    JSON.stringify(entry.verdict),
    entry.authority,
    entry.actor,
    entry.device,
    entry.deviceAt,
    entry.fingerprint,
  ]);
  if (row === undefined)
    throw new Error(`Combined event ${entry.combinedEventId} is not there to be recorded in.`);
  return row;
}

const APPEND: Statement = {
  name: 'combined_journal_append',
  text: `
    WITH counted AS (
      UPDATE combined_event SET last_sequence = last_sequence + 1, version = version + 1
       WHERE organisation_id = $1 AND id = $2 RETURNING last_sequence, version
    )
    INSERT INTO combined_entry (organisation_id, combined_event_id, sequence, entry_id, kind, body, standing, verdict,
                                authority, actor, device, device_at, fingerprint)
    SELECT $1, $2, last_sequence, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12 FROM counted
    RETURNING sequence, (SELECT version FROM counted) AS version, recorded_at AS "recordedAt"`,
};

/** The entry of that id in whichever combined event; `null`: not recorded yet. */
export async function findEntry(
  at: Reads,
  organisationId: string,
  entryId: string,
): Promise<CombinedEntryRow | null> {
  return managerOf(at).findOneBy(CombinedEntry, { organisationId, entryId });
}

/** The journals of several combined events, each in the order of recording. */
export async function readAll(
  at: Reads,
  organisationId: string,
  combinedEventIds: readonly string[],
): Promise<CombinedEntryRow[]> {
  return managerOf(at).find(CombinedEntry, {
    where: { organisationId, combinedEventId: In([...combinedEventIds]) },
    order: { combinedEventId: 'ASC', sequence: 'ASC' },
  });
}

/** In the order of recording. */
export async function page(
  at: Reads,
  organisationId: string,
  combinedEventId: string,
  request: PageRequest,
): Promise<Page<CombinedEntryRow>> {
  const first = checkedFirst(request.first);
  const after = typeof request.after === 'string' ? Number(readCursor(request.after, [isSequence])[0]) : 0;
  const rows = await managerOf(at).find(CombinedEntry, {
    where: { organisationId, combinedEventId, sequence: MoreThan(after) },
    order: { sequence: 'ASC' },
    take: first + 1,
  });
  return pageOf(rows, first, (row) => [row.sequence]);
}
