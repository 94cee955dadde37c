import { In } from 'typeorm';
import { Meet } from '../entities/meet.entity.js';
import { checkedFirst, isDay, pageOf, readCursor, isUuid, type Page, type PageRequest } from '../page.js';
import type { MeetRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export type MeetChanges = Partial<Omit<MeetRow, 'organisationId' | 'id'>>;

export async function insert(tx: Tx, row: MeetRow): Promise<void> {
  await managerOf(tx).insert(Meet, row);
}

/** False: there is no such meet. */
export async function update(
  tx: Tx,
  organisationId: string,
  id: string,
  changes: MeetChanges,
): Promise<boolean> {
  if (Object.keys(changes).length === 0) return (await find(tx, organisationId, id)) !== null;
  const { affected } = await managerOf(tx).update(Meet, { organisationId, id }, changes);
  return affected === 1;
}

/** Locks the meet's row until the transaction ends. False: there is no such meet. */
export async function lock(tx: Tx, organisationId: string, id: string): Promise<boolean> {
  const rows = await managerOf(tx).query<unknown[]>(
    `SELECT 1 FROM meet WHERE organisation_id = $1 AND id = $2 FOR NO KEY UPDATE`,
    [organisationId, id],
  );
  return rows.length > 0;
}

export async function find(at: Reads, organisationId: string, id: string): Promise<MeetRow | null> {
  return managerOf(at).findOneBy(Meet, { organisationId, id });
}

/** Those of `ids` that there are, in no order. */
export async function byIds(at: Reads, organisationId: string, ids: readonly string[]): Promise<MeetRow[]> {
  return managerOf(at).findBy(Meet, { organisationId, id: In([...ids]) });
}

export interface MeetPageRequest extends PageRequest {
  /** Only meets that the public may see. */
  readonly published?: boolean;
}

/** The latest first. */
export async function page(
  at: Reads,
  organisationId: string,
  request: MeetPageRequest,
): Promise<Page<MeetRow>> {
  const first = checkedFirst(request.first);
  const query = managerOf(at)
    .createQueryBuilder(Meet, 'meet')
    .where('meet.organisationId = :organisationId', { organisationId })
    .orderBy({ 'meet.startsOn': 'DESC', 'meet.id': 'DESC' })
    .limit(first + 1);
  if (request.published === true) query.andWhere('meet.publishedAt IS NOT NULL');
  if (typeof request.after === 'string') {
    const [startsOn, id] = readCursor(request.after, [isDay, isUuid]);
    query.andWhere('(meet.startsOn, meet.id) < (:startsOn, :id)', { startsOn, id });
  }
  return pageOf(await query.getMany(), first, (row) => [row.startsOn, row.id]);
}
