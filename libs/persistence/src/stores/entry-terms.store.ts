import { EntryTerms } from '../entities/entry-terms.entity.js';
import type { EntryTermsRow } from '../entry-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewEntryTerms = Omit<EntryTermsRow, 'setAt'>;

/** The caller holds the meet's lock, so that revisions follow each other. */
export async function insert(tx: Tx, row: NewEntryTerms): Promise<void> {
  await managerOf(tx).insert(EntryTerms, row);
}

/** What counts; `null`: nobody has laid anything down. */
export async function latest(
  at: Reads,
  organisationId: string,
  meetId: string,
): Promise<EntryTermsRow | null> {
  return managerOf(at).findOne(EntryTerms, {
    where: { organisationId, meetId },
    order: { revision: 'DESC' },
  });
}
