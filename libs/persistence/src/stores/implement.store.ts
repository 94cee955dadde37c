import { In, type FindOptionsWhere } from 'typeorm';
import type { ThrowEventCode } from '#rules';
import { Implement } from '../entities/implement.entity.js';
import { checkedFirst, isName, isUuid, pageOf, readCursor, type Page, type PageRequest } from '../page.js';
import type { ImplementRow } from '../inspection-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewImplement = Omit<ImplementRow, 'registeredAt'>;

export async function insert(tx: Tx, row: NewImplement): Promise<void> {
  await managerOf(tx).insert(Implement, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<ImplementRow | null> {
  return managerOf(at).findOneBy(Implement, { organisationId, id });
}

export async function byIds(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<ImplementRow[]> {
  return managerOf(at).findBy(Implement, { organisationId, id: In([...ids]) });
}

/** Those that were registered or inspected at a meet, by event and label. */
export async function ofMeet(at: Reads, organisationId: string, meetId: string): Promise<ImplementRow[]> {
  return managerOf(at)
    .createQueryBuilder(Implement, 'implement')
    .where('implement.organisationId = :organisationId', { organisationId })
    .andWhere(
      `(implement.meetId = :meetId OR implement.id IN (
         SELECT implement_id FROM inspection WHERE meet_id = :meetId AND organisation_id = :organisationId))`,
      { meetId },
    )
    .orderBy({ 'implement.event': 'ASC', 'implement.label': 'ASC', 'implement.id': 'ASC' })
    .getMany();
}

/** Those of an event that belong to one of these clubs or athletes, by label. */
export async function ofOwners(
  at: Reads,
  organisationId: string,
  event: ThrowEventCode,
  { clubIds, athleteIds }: { readonly clubIds: readonly string[]; readonly athleteIds: readonly string[] },
): Promise<ImplementRow[]> {
  const where: FindOptionsWhere<Implement>[] = [
    { organisationId, event, clubId: In([...clubIds]) },
    { organisationId, event, athleteId: In([...athleteIds]) },
  ];
  return managerOf(at).find(Implement, { where, order: { label: 'ASC', id: 'ASC' } });
}

/** The register of an event, by label. */
export async function page(
  at: Reads,
  organisationId: string,
  event: ThrowEventCode,
  request: PageRequest,
): Promise<Page<ImplementRow>> {
  const first = checkedFirst(request.first);
  const query = managerOf(at)
    .createQueryBuilder(Implement, 'implement')
    .where('implement.organisationId = :organisationId AND implement.event = :event', {
      organisationId,
      event,
    })
    .orderBy({ 'implement.label': 'ASC', 'implement.id': 'ASC' })
    .limit(first + 1);
  if (typeof request.after === 'string') {
    const [label, id] = readCursor(request.after, [isName, isUuid]);
    query.andWhere('(implement.label, implement.id) > (:label, :id)', { label, id });
  }
  return pageOf(await query.getMany(), first, (row) => [row.label, row.id]);
}
