import { In } from 'typeorm';
import { CombinedEntrant } from '../entities/combined-entrant.entity.js';
import type { CombinedEntrantRow } from '../combined-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/* Whoever changes the entrants holds the combined event's lock and bumps its version. */

export async function insert(tx: Tx, rows: readonly CombinedEntrantRow[]): Promise<void> {
  if (rows.length > 0) await managerOf(tx).insert(CombinedEntrant, [...rows]);
}

export async function find(
  at: Reads,
  organisationId: string,
  id: string,
): Promise<CombinedEntrantRow | null> {
  return managerOf(at).findOneBy(CombinedEntrant, { organisationId, id });
}

/** False: there is no such entrant. */
export async function remove(tx: Tx, organisationId: string, id: string): Promise<boolean> {
  const { affected } = await managerOf(tx).delete(CombinedEntrant, { organisationId, id });
  return affected === 1;
}

/** The entrants of several combined events, each in the original order. */
export async function ofEvents(
  at: Reads,
  organisationId: string,
  combinedEventIds: readonly string[],
): Promise<CombinedEntrantRow[]> {
  return managerOf(at).find(CombinedEntrant, {
    where: { organisationId, combinedEventId: In([...combinedEventIds]) },
    order: { position: 'ASC' },
  });
}
