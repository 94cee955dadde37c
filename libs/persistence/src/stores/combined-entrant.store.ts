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

/** As of competitors: takes names off the lists of combined events. */
export async function eraseListedNames(
  tx: Tx,
  organisationId: string,
  { ids, names }: { readonly ids: readonly string[]; readonly names: readonly string[] },
): Promise<Pick<CombinedEntrantRow, 'id' | 'combinedEventId'>[]> {
  const [rows] = await managerOf(tx).query<[Pick<CombinedEntrantRow, 'id' | 'combinedEventId'>[], number]>(
    `UPDATE combined_entrant SET listed_name = NULL
      WHERE organisation_id = $1 AND listed_name IS NOT NULL AND (id = ANY ($2) OR lower(listed_name) = ANY ($3))
      RETURNING id, combined_event_id AS "combinedEventId"`,
    [organisationId, ids, names.map((name) => name.toLowerCase())],
  );
  return rows;
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
