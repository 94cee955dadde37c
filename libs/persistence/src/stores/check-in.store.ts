import { In } from 'typeorm';
import { CheckIn } from '../entities/check-in.entity.js';
import type { CheckInRow } from '../inspection-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its number and its time. */
export type NewCheckIn = Omit<CheckInRow, 'sequence' | 'recordedAt'>;

/** The caller holds the lock of the competition. */
export async function append(tx: Tx, row: NewCheckIn): Promise<void> {
  const { organisationId, competitorId } = row;
  const before = await managerOf(tx).countBy(CheckIn, { organisationId, competitorId });
  await managerOf(tx).insert(CheckIn, { ...row, sequence: before + 1 });
}

export async function find(at: Reads, organisationId: string, id: string): Promise<CheckInRow | null> {
  return managerOf(at).findOneBy(CheckIn, { organisationId, id });
}

/** Of each of these competitors everything, in the order of recording. */
export async function ofCompetitors(
  at: Reads,
  organisationId: string,
  competitorIds: readonly string[],
): Promise<CheckInRow[]> {
  return managerOf(at).find(CheckIn, {
    where: { organisationId, competitorId: In([...competitorIds]) },
    order: { competitorId: 'ASC', sequence: 'ASC' },
  });
}
