import { EnteredResult } from '../entities/entered-result.entity.js';
import type { EnteredResultRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewEnteredResult = Omit<EnteredResultRow, 'enteredAt'>;

/** Throws a `unique` violation of `entered_result_replaced_once` when what it replaces has been replaced. */
export async function insert(tx: Tx, row: NewEnteredResult): Promise<void> {
  await managerOf(tx).insert(EnteredResult, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<EnteredResultRow | null> {
  return managerOf(at).findOneBy(EnteredResult, { organisationId, id });
}

/** The result that replaces this one; `null`: it counts. */
export async function replacementOf(
  at: Reads,
  organisationId: string,
  id: string,
): Promise<EnteredResultRow | null> {
  return managerOf(at).findOneBy(EnteredResult, { organisationId, replacesId: id });
}

/** Everything that was entered at a meet, in the order of entering. */
export async function ofMeet(at: Reads, organisationId: string, meetId: string): Promise<EnteredResultRow[]> {
  return managerOf(at).find(EnteredResult, {
    where: { organisationId, meetId },
    order: { enteredAt: 'ASC', id: 'ASC' },
  });
}
