import type { CombinedEventCode } from '#rules';
import { In } from 'typeorm';
import { CombinedEvent } from '../entities/combined-event.entity.js';
import { CombinedLink } from '../entities/combined-link.entity.js';
import type { CombinedEventRow, CombinedLinkRow } from '../combined-rows.js';
import type { CompetitionStatus } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** A new combined event begins as a draft, at version 0, with an empty journal. */
export type NewCombinedEvent = Omit<CombinedEventRow, 'status' | 'version' | 'lastSequence'>;

export async function insert(tx: Tx, row: NewCombinedEvent): Promise<void> {
  await managerOf(tx).insert(CombinedEvent, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<CombinedEventRow | null> {
  return managerOf(at).findOneBy(CombinedEvent, { organisationId, id });
}

/** Those of several meets, by title. */
export async function ofMeets(
  at: Reads,
  organisationId: string,
  meetIds: readonly string[],
): Promise<CombinedEventRow[]> {
  return managerOf(at).find(CombinedEvent, {
    where: { organisationId, meetId: In([...meetIds]) },
    order: { title: 'ASC', id: 'ASC' },
  });
}

/** Locks the row until the transaction ends; waits for whoever has the lock. `null`: there is none. */
export async function lock(tx: Tx, organisationId: string, id: string): Promise<CombinedEventRow | null> {
  return managerOf(tx).findOne(CombinedEvent, {
    where: { organisationId, id },
    lock: { mode: 'pessimistic_write' },
  });
}

/** Makes a change known that lies in another table, and sets the status with it. Returns the new version. */
export async function bumpVersion(
  tx: Tx,
  organisationId: string,
  id: string,
  status: CompetitionStatus | null = null,
): Promise<number> {
  const [rows] = await managerOf(tx).query<[{ version: number }[], number]>(
    `UPDATE combined_event SET version = version + 1, status = coalesce($3, status)
      WHERE organisation_id = $1 AND id = $2 RETURNING version`,
    [organisationId, id, status],
  );
  const row = rows[0];
  if (row === undefined) throw new Error(`Combined event ${id} is not there to be changed.`);
  return row.version;
}

/** Says from which competition an event is counted from now on. The caller holds the lock. */
export async function link(tx: Tx, row: Omit<CombinedLinkRow, 'revision' | 'linkedAt'>): Promise<void> {
  await managerOf(tx).query(
    `INSERT INTO combined_link (organisation_id, combined_event_id, revision, event, competition_id, linked_by)
     SELECT $1, $2, coalesce(max(revision), 0) + 1, $3, $4, $5
       FROM combined_link WHERE organisation_id = $1 AND combined_event_id = $2`,
    [row.organisationId, row.combinedEventId, row.event, row.competitionId, row.linkedBy],
  );
}

/** The links in force of several combined events: of each event the newest, unless it ends the link. */
export async function linksOf(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<{ combinedEventId: string; event: CombinedEventCode; competitionId: string }[]> {
  const rows = await managerOf(at).find(CombinedLink, {
    where: { organisationId, combinedEventId: In([...ids]) },
    order: { combinedEventId: 'ASC', revision: 'ASC' },
  });
  const newest = new Map(rows.map((row) => [`${row.combinedEventId} ${row.event}`, row]));
  return [...newest.values()].flatMap(({ combinedEventId, event, competitionId }) =>
    competitionId === null ? [] : [{ combinedEventId, event, competitionId }],
  );
}

/** Whether an event of a combined event is counted from this competition now. */
export async function isLinked(at: Reads, organisationId: string, competitionId: string): Promise<boolean> {
  const rows = await managerOf(at).query<unknown[]>(
    `SELECT 1 FROM combined_link AS own
      WHERE competition_id = $2 AND organisation_id = $1 AND NOT EXISTS (
        SELECT 1 FROM combined_link AS later
         WHERE later.organisation_id = own.organisation_id AND later.combined_event_id = own.combined_event_id
           AND later.event = own.event AND later.revision > own.revision)
      LIMIT 1`,
    [organisationId, competitionId],
  );
  return rows.length > 0;
}
