import { EntryChange } from '../entities/entry-change.entity.js';
import type { EntryChangeRow } from '../entry-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewEntryChange = Omit<EntryChangeRow, 'madeAt'>;

/** So many rows in one statement: it takes 65,535 values at most. */
const AT_ONCE = 2000;

export async function insert(tx: Tx, rows: readonly NewEntryChange[]): Promise<void> {
  for (let from = 0; from < rows.length; from += AT_ONCE) {
    await managerOf(tx).insert(EntryChange, rows.slice(from, from + AT_ONCE));
  }
}

/** Who came and who went, in the order of time. */
export async function ofCompetition(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<EntryChangeRow[]> {
  return managerOf(at).find(EntryChange, {
    where: { organisationId, competitionId },
    order: { madeAt: 'ASC', id: 'ASC' },
  });
}
