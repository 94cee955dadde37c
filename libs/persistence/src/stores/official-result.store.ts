import { OfficialResult } from '../entities/official-result.entity.js';
import type { OfficialResultRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives a signed result its revision and its time. */
export type NewOfficialResult = Omit<OfficialResultRow, 'revision' | 'signedAt'>;

/** Archives a signed-off result. The caller holds the competition's lock. Returns revision and time. */
export async function archive(
  tx: Tx,
  row: NewOfficialResult,
): Promise<Pick<OfficialResultRow, 'revision' | 'signedAt'>> {
  const rows = await managerOf(tx).query<Pick<OfficialResultRow, 'revision' | 'signedAt'>[]>(
    `INSERT INTO official_result (organisation_id, competition_id, revision, sequence, sheet, result, signed_by, confirmed_by)
     SELECT $1, $2, coalesce(max(revision), 0) + 1, $3, $4, $5, $6, $7
       FROM official_result WHERE organisation_id = $1 AND competition_id = $2
     RETURNING revision, signed_at AS "signedAt"`,
    [
      row.organisationId,
      row.competitionId,
      row.sequence,
      JSON.stringify(row.sheet),
      JSON.stringify(row.result),
      row.signedBy,
      row.confirmedBy,
    ],
  );
  const stored = rows[0];
  if (stored === undefined) throw new Error('An archived result came back without its revision.');
  return stored;
}

/** Every revision, the newest first. */
export async function ofCompetition(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<OfficialResultRow[]> {
  return managerOf(at).find(OfficialResult, {
    where: { organisationId, competitionId },
    order: { revision: 'DESC' },
  });
}

/** The result that counts; `null`: never signed off. */
export async function latest(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<OfficialResultRow | null> {
  return managerOf(at).findOne(OfficialResult, {
    where: { organisationId, competitionId },
    order: { revision: 'DESC' },
  });
}
