import { PastResult } from '../entities/past-result.entity.js';
import { checkedFirst, isDay, isUuid, pageOf, readCursor, type Page, type PageRequest } from '../page.js';
import type { PastResultRow } from '../entry-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewPastResult = Omit<PastResultRow, 'enteredAt'>;

/** So many rows in one statement: it takes 65,535 values at most. */
const AT_ONCE = 1000;

/** Throws a `unique` violation of `past_result_replaced_once` when what one takes back has been taken back. */
export async function insert(tx: Tx, rows: readonly NewPastResult[]): Promise<void> {
  for (let from = 0; from < rows.length; from += AT_ONCE) {
    await managerOf(tx).insert(PastResult, rows.slice(from, from + AT_ONCE));
  }
}

export async function find(at: Reads, organisationId: string, id: string): Promise<PastResultRow | null> {
  return managerOf(at).findOneBy(PastResult, { organisationId, id });
}

/** The row that takes this one back; `null`: it counts. */
export async function replacementOf(
  at: Reads,
  organisationId: string,
  id: string,
): Promise<PastResultRow | null> {
  return managerOf(at).findOneBy(PastResult, { organisationId, replacesId: id });
}

const COUNTING = `past.counts AND NOT EXISTS (SELECT FROM past_result AS later
  WHERE later.organisation_id = past.organisation_id AND later.replaces_id = past.id)`;

/** Those that count, of any of these athletes, by day. */
export async function counting(
  at: Reads,
  organisationId: string,
  athleteIds: readonly string[],
): Promise<PastResultRow[]> {
  if (athleteIds.length === 0) return [];
  return managerOf(at)
    .createQueryBuilder(PastResult, 'past')
    .where('past.organisationId = :organisationId AND past.athleteId = ANY (:ids::uuid[])', {
      organisationId,
      ids: athleteIds,
    })
    .andWhere(COUNTING)
    .orderBy({ 'past.onDate': 'ASC', 'past.id': 'ASC' })
    .getMany();
}

/** Those that count of one athlete, the latest first. */
export async function page(
  at: Reads,
  organisationId: string,
  athleteId: string,
  request: PageRequest,
): Promise<Page<PastResultRow>> {
  const first = checkedFirst(request.first);
  const query = managerOf(at)
    .createQueryBuilder(PastResult, 'past')
    .where('past.organisationId = :organisationId AND past.athleteId = :athleteId', {
      organisationId,
      athleteId,
    })
    .andWhere(COUNTING)
    .orderBy({ 'past.onDate': 'DESC', 'past.id': 'DESC' })
    .limit(first + 1);
  if (typeof request.after === 'string') {
    const [onDate, id] = readCursor(request.after, [isDay, isUuid]);
    query.andWhere('(past.onDate, past.id) < (:onDate, :id)', { onDate, id });
  }
  return pageOf(await query.getMany(), first, (row) => [row.onDate, row.id]);
}
