import { CombinedRequest } from '../entities/combined-request.entity.js';
import type { CombinedRequestRow } from '../combined-rows.js';
import { managerOf, type Tx } from '../transaction.js';

/* The caller holds the combined event's lock. */

/** The database gives it its time. */
export async function ask(tx: Tx, row: Omit<CombinedRequestRow, 'askedAt'>): Promise<void> {
  await managerOf(tx).insert(CombinedRequest, row);
}

/** What was asked of a combined event at this version, the first one first: all that may still be confirmed. */
export async function waiting(
  tx: Tx,
  of: Pick<CombinedRequestRow, 'organisationId' | 'combinedEventId' | 'kind' | 'version'>,
): Promise<CombinedRequestRow[]> {
  const { organisationId, combinedEventId, kind, version } = of;
  return managerOf(tx).find(CombinedRequest, {
    where: { organisationId, combinedEventId, kind, version },
    order: { askedAt: 'ASC', id: 'ASC' },
  });
}
