import { In } from 'typeorm';
import { Club } from '../entities/club.entity.js';
import { checkedFirst, pageOf, readCursor, isName, isUuid, type Page, type PageRequest } from '../page.js';
import type { ClubRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** Throws a `unique` violation of `club_name_unique` when the organisation has a club of that name. */
export async function insert(tx: Tx, row: ClubRow): Promise<void> {
  await managerOf(tx).insert(Club, row);
}

/** As {@link insert}, for many. */
export async function insertAll(tx: Tx, rows: readonly ClubRow[]): Promise<void> {
  if (rows.length > 0) await managerOf(tx).insert(Club, [...rows]);
}

/** All clubs of the organisation, by name. */
export async function all(at: Reads, organisationId: string): Promise<ClubRow[]> {
  return managerOf(at).find(Club, { where: { organisationId }, order: { name: 'ASC', id: 'ASC' } });
}

/** False: there is no such club. */
export async function rename(tx: Tx, organisationId: string, id: string, name: string): Promise<boolean> {
  const { affected } = await managerOf(tx).update(Club, { organisationId, id }, { name });
  return affected === 1;
}

export async function find(at: Reads, organisationId: string, id: string): Promise<ClubRow | null> {
  return managerOf(at).findOneBy(Club, { organisationId, id });
}

export async function findByName(at: Reads, organisationId: string, name: string): Promise<ClubRow | null> {
  return managerOf(at).findOneBy(Club, { organisationId, name });
}

/** Those of `ids` that there are, in no order. */
export async function byIds(at: Reads, organisationId: string, ids: readonly string[]): Promise<ClubRow[]> {
  return managerOf(at).findBy(Club, { organisationId, id: In([...ids]) });
}

/** By name. */
export async function page(at: Reads, organisationId: string, request: PageRequest): Promise<Page<ClubRow>> {
  const first = checkedFirst(request.first);
  const query = managerOf(at)
    .createQueryBuilder(Club, 'club')
    .where('club.organisationId = :organisationId', { organisationId })
    .orderBy({ 'club.name': 'ASC', 'club.id': 'ASC' })
    .limit(first + 1);
  if (typeof request.after === 'string') {
    const [name, id] = readCursor(request.after, [isName, isUuid]);
    query.andWhere('(club.name, club.id) > (:name, :id)', { name, id });
  }
  return pageOf(await query.getMany(), first, (row) => [row.name, row.id]);
}
