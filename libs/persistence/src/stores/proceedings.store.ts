import { Protest } from '../entities/protest.entity.js';
import { ProtestStep } from '../entities/protest-step.entity.js';
import { ResultPosting } from '../entities/result-posting.entity.js';
import { In } from 'typeorm';
import type {
  ProtestRow,
  ProtestState,
  ProtestStepRow,
  ResultPostingRow,
  StoredProceedings,
} from '../proceedings-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/* The caller of what adds holds the competition's lock. The database gives each row its time of recording. */

export type NewPosting = Omit<ResultPostingRow, 'recordedAt'>;
export type NewProtest = Omit<ProtestRow, 'recordedAt'>;
/** The database gives it its number as well. */
export type NewProtestStep = Omit<ProtestStepRow, 'recordedAt' | 'number'>;

export async function post(tx: Tx, row: NewPosting): Promise<void> {
  await managerOf(tx).insert(ResultPosting, row);
}

export async function lodge(tx: Tx, row: NewProtest): Promise<void> {
  await managerOf(tx).insert(Protest, row);
}

export async function addStep(tx: Tx, row: NewProtestStep): Promise<void> {
  const { organisationId, protestId } = row;
  const before = await managerOf(tx).countBy(ProtestStep, { organisationId, protestId });
  await managerOf(tx).insert(ProtestStep, { ...row, number: before + 1 });
}

/** All that was posted, signed and protested in one competition, each list in order. */
export async function ofCompetition(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<StoredProceedings> {
  const manager = managerOf(at);
  const mine = { organisationId, competitionId };
  const signatures = await manager.query<StoredProceedings['signatures'][number][]>(
    `SELECT revision, signed_at AS "signedAt" FROM official_result
      WHERE organisation_id = $1 AND competition_id = $2 ORDER BY revision`,
    [organisationId, competitionId],
  );
  const postings = await manager.find(ResultPosting, {
    where: mine,
    order: { recordedAt: 'ASC', id: 'ASC' },
  });
  const protests = await manager.find(Protest, { where: mine, order: { recordedAt: 'ASC', id: 'ASC' } });
  return { signatures, postings, protests: await withSteps(at, organisationId, protests) };
}

async function withSteps(
  at: Reads,
  organisationId: string,
  protests: readonly ProtestRow[],
): Promise<ProtestState[]> {
  if (protests.length === 0) return [];
  const steps = await managerOf(at).find(ProtestStep, {
    where: { organisationId, protestId: In(protests.map(({ id }) => id)) },
    order: { number: 'ASC' },
  });
  return protests.map((protest) => ({
    ...protest,
    steps: steps.filter(({ protestId }) => protestId === protest.id),
  }));
}

/** Every signature in several competitions, in the order of signing. */
export async function signaturesOf(
  at: Reads,
  organisationId: string,
  competitionIds: readonly string[],
): Promise<{ readonly competitionId: string; readonly revision: number; readonly signedAt: string }[]> {
  return managerOf(at).query(
    `SELECT competition_id AS "competitionId", revision, signed_at AS "signedAt" FROM official_result
      WHERE organisation_id = $1 AND competition_id = ANY ($2::uuid[]) ORDER BY signed_at, competition_id, revision`,
    [organisationId, competitionIds],
  );
}
