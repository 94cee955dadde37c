import { CombinedOfficialResult } from '../entities/combined-official-result.entity.js';
import type { CombinedOfficialResultRow } from '../combined-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** Archives a signed-off combined event. The caller holds the lock. Returns the revision. */
export async function archive(
  tx: Tx,
  row: Omit<CombinedOfficialResultRow, 'revision' | 'signedAt'>,
): Promise<number> {
  const rows = await managerOf(tx).query<{ revision: number }[]>(
    `INSERT INTO combined_official_result
       (organisation_id, combined_event_id, revision, sequence, sheet, result, signed_by, confirmed_by)
     SELECT $1, $2, coalesce(max(revision), 0) + 1, $3, $4, $5, $6, $7
       FROM combined_official_result WHERE organisation_id = $1 AND combined_event_id = $2
     RETURNING revision`,
    [
      row.organisationId,
      row.combinedEventId,
      row.sequence,
      row.sheet && JSON.stringify(row.sheet),
      JSON.stringify(row.result),
      row.signedBy,
      row.confirmedBy,
    ],
  );
  const stored = rows[0];
  if (stored === undefined) throw new Error('An archived result came back without its revision.');
  return stored.revision;
}

/** The result that counts; `null`: never signed off. */
export async function latest(
  at: Reads,
  organisationId: string,
  combinedEventId: string,
): Promise<CombinedOfficialResultRow | null> {
  return managerOf(at).findOne(CombinedOfficialResult, {
    where: { organisationId, combinedEventId },
    order: { revision: 'DESC' },
  });
}
