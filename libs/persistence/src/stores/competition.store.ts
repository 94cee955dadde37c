import { In } from 'typeorm';
import { Competition } from '../entities/competition.entity.js';
import type { CompetitionRow } from '../rows.js';
import { columns, execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** A new competition begins as a draft, at version 0, with an empty journal, in no calling group. */
export type NewCompetition = Omit<
  CompetitionRow,
  | 'status'
  | 'version'
  | 'lastSequence'
  | 'callingGroupId'
  | 'callingPosition'
  | 'categoryScheme'
  | 'isWithheld'
  | 'withheldUntil'
> &
  Partial<Pick<CompetitionRow, 'categoryScheme'>>;
/** `lastSequence` moves with the journal alone, `version` with every change. */
export type CompetitionChanges = Partial<
  Omit<CompetitionRow, 'organisationId' | 'id' | 'meetId' | 'version' | 'lastSequence'>
>;

export async function insert(tx: Tx, row: NewCompetition): Promise<void> {
  await managerOf(tx).insert(Competition, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<CompetitionRow | null> {
  return managerOf(at).findOneBy(Competition, { organisationId, id });
}

/** Of a meet, or of the whole organisation, in the order in which they were made. */
export async function idsOf(at: Reads, organisationId: string, meetId: string | null): Promise<string[]> {
  const rows = await managerOf(at).find(Competition, {
    select: { id: true, organisationId: true },
    where: { organisationId, ...(meetId !== null && { meetId }) },
    order: { id: 'ASC' },
  });
  return rows.map(({ id }) => id);
}

/** Those of `ids` that there are, in no order. */
export async function byIds(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<CompetitionRow[]> {
  return managerOf(at).findBy(Competition, { organisationId, id: In([...ids]) });
}

/** The versions of those that there are, in no order; of any organisations. */
export async function versions(
  at: Reads,
  keys: readonly Pick<CompetitionRow, 'organisationId' | 'id'>[],
): Promise<Pick<CompetitionRow, 'id' | 'version'>[]> {
  return execute(at, VERSIONS, [keys.map(({ organisationId }) => organisationId), keys.map(({ id }) => id)]);
}

const VERSIONS: Statement = {
  name: 'competition-versions',
  text: `SELECT id, version FROM unnest($1::uuid[], $2::uuid[]) AS asked (organisation_id, id)
           JOIN competition USING (organisation_id, id)`,
};

/** The competitions of a meet by time, those without a time last. */
export async function ofMeet(at: Reads, organisationId: string, meetId: string): Promise<CompetitionRow[]> {
  return managerOf(at).find(Competition, {
    where: { organisationId, meetId },
    order: { startsAt: { direction: 'ASC', nulls: 'LAST' }, title: 'ASC', id: 'ASC' },
  });
}

/** The competitions of several meets, each meet's by time, those without a time last. */
export async function ofMeets(
  at: Reads,
  organisationId: string,
  meetIds: readonly string[],
): Promise<CompetitionRow[]> {
  return managerOf(at).find(Competition, {
    where: { organisationId, meetId: In([...meetIds]) },
    order: { startsAt: { direction: 'ASC', nulls: 'LAST' }, title: 'ASC', id: 'ASC' },
  });
}

/** The competitions of several calling groups, each group's in its sequence. */
export async function ofCallingGroups(
  at: Reads,
  organisationId: string,
  callingGroupIds: readonly string[],
): Promise<CompetitionRow[]> {
  return managerOf(at).find(Competition, {
    where: { organisationId, callingGroupId: In([...callingGroupIds]) },
    order: { callingPosition: 'ASC' },
  });
}

/**
 * Makes these, in this sequence, the competitions of the group; others leave it. The caller holds the locks of the
 * group and of all competitions that come, go or stay. Returns those that changed, with their new versions.
 */
export async function setCallingGroup(
  tx: Tx,
  organisationId: string,
  callingGroupId: string,
  ids: readonly string[],
): Promise<{ readonly id: string; readonly version: number }[]> {
  type Changed = [{ id: string; version: number }[], number];
  const [left] = await managerOf(tx).query<Changed>(
    `UPDATE competition SET calling_group_id = NULL, calling_position = NULL, version = version + 1
      WHERE organisation_id = $1 AND calling_group_id = $2 AND id <> ALL ($3::uuid[]) RETURNING id, version`,
    [organisationId, callingGroupId, ids],
  );
  const [placed] = await managerOf(tx).query<Changed>(
    `UPDATE competition SET calling_group_id = $2, calling_position = wanted.position, version = version + 1
       FROM unnest($3::uuid[]) WITH ORDINALITY AS wanted (id, position)
      WHERE competition.organisation_id = $1 AND competition.id = wanted.id
        AND (calling_group_id, calling_position) IS DISTINCT FROM ($2::uuid, wanted.position::integer)
     RETURNING competition.id, version`,
    [organisationId, callingGroupId, ids],
  );
  return [...left, ...placed];
}

/**
 * Locks the competition's row until the transaction ends, so that whatever is decided from what is read afterwards
 * still holds when it is stored. Waits for whoever has the lock. `null`: there is no such competition.
 */
export async function lock(tx: Tx, organisationId: string, id: string): Promise<CompetitionRow | null> {
  const rows = await execute<CompetitionRow>(tx, LOCK, [organisationId, id]);
  return rows[0] ?? null;
}

const LOCK: Statement = {
  name: 'competition_lock',
  text: `SELECT ${columns(
    'organisationId',
    'id',
    'meetId',
    'title',
    'event',
    'rules',
    'edition',
    'indoor',
    'stage',
    'qualifying',
    'plan',
    'vertical',
    'unit',
    'categorySex',
    'categoryAge',
    'categoryScheme',
    'implementGrams',
    'scoring',
    'status',
    'version',
    'lastSequence',
    'startsAt',
    'callingGroupId',
    'callingPosition',
    'isWithheld',
    'withheldUntil',
  )} FROM competition WHERE organisation_id = $1 AND id = $2 FOR UPDATE`,
};

/** The version that a reader would see now; `null`: there is no such competition. */
export async function versionOf(at: Reads, organisationId: string, id: string): Promise<number | null> {
  const rows = await execute<{ version: number }>(at, VERSION, [organisationId, id]);
  return rows[0]?.version ?? null;
}

const VERSION: Statement = {
  name: 'competition_version',
  text: `SELECT version FROM competition WHERE organisation_id = $1 AND id = $2`,
};

/** Makes a change known that lies in another table (the start list). Returns the new version. */
export async function bumpVersion(tx: Tx, organisationId: string, id: string): Promise<number> {
  const [rows] = await managerOf(tx).query<[{ version: number }[], number]>(
    `UPDATE competition SET version = version + 1 WHERE organisation_id = $1 AND id = $2 RETURNING version`,
    [organisationId, id],
  );
  const row = rows[0];
  if (row === undefined) throw new Error(`Competition ${id} is not there to be changed.`);
  return row.version;
}

/**
 * Changes the competition if it still has the version that the caller knows. Returns the new version; `null`: it has
 * moved on (or is not there), and nothing was changed.
 */
export async function updateAt(
  tx: Tx,
  organisationId: string,
  id: string,
  expectedVersion: number,
  changes: CompetitionChanges,
): Promise<number | null> {
  const { affected } = await managerOf(tx).update(
    Competition,
    { organisationId, id, version: expectedVersion },
    { ...changes, version: expectedVersion + 1 },
  );
  return affected === 1 ? expectedVersion + 1 : null;
}
