import { MoreThan } from 'typeorm';
import { JournalEntry } from '../entities/journal-entry.entity.js';
import { checkedFirst, pageOf, readCursor, isSequence, type Page, type PageRequest } from '../page.js';
import type { JournalRow } from '../rows.js';
import { columns, execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives an entry its sequence and its time. */
export type NewEntry = Omit<JournalRow, 'sequence' | 'recordedAt'>;

export interface Appended {
  readonly sequence: number;
  /** Of the competition, with this entry. */
  readonly version: number;
  readonly recordedAt: string;
}

/**
 * Appends one entry and counts it in the competition, in one statement. The caller holds the competition's lock.
 * Throws a `unique` violation of `journal_entry_id_unique` when an entry of that id is there already, in whichever
 * competition; the transaction is lost then.
 */
export async function append(tx: Tx, entry: NewEntry): Promise<Appended> {
  const [row] = await execute<Appended>(tx, APPEND, [
    entry.organisationId,
    entry.competitionId,
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
    throw new Error(`Competition ${entry.competitionId} is not there to be recorded in.`);
  return row;
}

const APPEND: Statement = {
  name: 'journal_append',
  text: `
    WITH counted AS (
      UPDATE competition SET last_sequence = last_sequence + 1, version = version + 1
       WHERE organisation_id = $1 AND id = $2 RETURNING last_sequence, version
    )
    INSERT INTO journal_entry (organisation_id, competition_id, sequence, entry_id, kind, body, standing, verdict,
                               authority, actor, device, device_at, fingerprint)
    SELECT $1, $2, last_sequence, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12 FROM counted
    RETURNING sequence, (SELECT version FROM counted) AS version, recorded_at AS "recordedAt"`,
};

const ROW = columns(
  'organisationId',
  'competitionId',
  'sequence',
  'entryId',
  'kind',
  'body',
  'standing',
  'verdict',
  'authority',
  'actor',
  'device',
  'deviceAt',
  'recordedAt',
  'fingerprint',
);

/** The entry of that id in whichever competition, to answer one that is sent again; `null`: not recorded yet. */
export async function findEntry(
  at: Reads,
  organisationId: string,
  entryId: string,
): Promise<JournalRow | null> {
  const rows = await execute<JournalRow>(at, FIND, [organisationId, entryId]);
  return rows[0] ?? null;
}

const FIND: Statement = {
  name: 'journal_find',
  text: `SELECT ${ROW} FROM journal_entry WHERE organisation_id = $1 AND entry_id = $2`,
};

/** All entries after `afterSequence` in the order of recording; 0 reads the whole journal. */
export async function read(
  at: Reads,
  organisationId: string,
  competitionId: string,
  afterSequence: number,
): Promise<JournalRow[]> {
  return execute<JournalRow>(at, READ, [organisationId, competitionId, afterSequence]);
}

const READ: Statement = {
  name: 'journal_read',
  text: `
    SELECT ${ROW} FROM journal_entry
     WHERE organisation_id = $1 AND competition_id = $2 AND sequence > $3 ORDER BY sequence`,
};

/** When these entries were recorded; those that there are, in no order. */
export async function recordedAt(
  at: Reads,
  organisationId: string,
  entries: readonly Pick<JournalRow, 'competitionId' | 'sequence'>[],
): Promise<Pick<JournalRow, 'competitionId' | 'sequence' | 'recordedAt'>[]> {
  if (entries.length === 0) return [];
  return execute(at, RECORDED_AT, [
    organisationId,
    entries.map(({ competitionId }) => competitionId),
    entries.map(({ sequence }) => sequence),
  ]);
}

const RECORDED_AT: Statement = {
  name: 'journal_recorded_at',
  text: `
    SELECT competition_id AS "competitionId", sequence, recorded_at AS "recordedAt" FROM journal_entry
      JOIN unnest($2::uuid[], $3::integer[]) AS wanted (competition_id, sequence) USING (competition_id, sequence)
     WHERE organisation_id = $1`,
};

/** What a fold needs of an entry, and when it was recorded. */
export type FoldedRow = Pick<
  JournalRow,
  'competitionId' | 'entryId' | 'authority' | 'actor' | 'body' | 'verdict' | 'recordedAt'
>;

/** The journals of several competitions, each in the order of recording. */
export async function readAll(
  at: Reads,
  organisationId: string,
  competitionIds: readonly string[],
): Promise<FoldedRow[]> {
  return execute<FoldedRow>(at, READ_ALL, [organisationId, competitionIds]);
}

const READ_ALL: Statement = {
  name: 'journal_read_all',
  text: `
    SELECT ${columns('competitionId', 'entryId', 'authority', 'actor', 'body', 'verdict', 'recordedAt')}
      FROM journal_entry
     WHERE organisation_id = $1 AND competition_id = ANY ($2::uuid[]) ORDER BY competition_id, sequence`,
};

/** In the order of recording. */
export async function page(
  at: Reads,
  organisationId: string,
  competitionId: string,
  request: PageRequest,
): Promise<Page<JournalRow>> {
  const first = checkedFirst(request.first);
  const after = typeof request.after === 'string' ? Number(readCursor(request.after, [isSequence])[0]) : 0;
  const rows = await managerOf(at).find(JournalEntry, {
    where: { organisationId, competitionId, sequence: MoreThan(after) },
    order: { sequence: 'ASC' },
    take: first + 1,
  });
  return pageOf(rows, first, (row) => [row.sequence]);
}
