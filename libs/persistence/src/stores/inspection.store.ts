import { In } from 'typeorm';
import { Inspection } from '../entities/inspection.entity.js';
import type { InspectionRow } from '../inspection-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its number and its time. */
export type NewInspection = Omit<InspectionRow, 'sequence' | 'inspectedAt'>;

/** Takes the meet's lock, so that nobody else adds to its log. False: there is no such meet. */
export async function lockLog(tx: Tx, organisationId: string, meetId: string): Promise<boolean> {
  const meets = await managerOf(tx).query<unknown[]>(
    `SELECT 1 FROM meet WHERE organisation_id = $1 AND id = $2 FOR NO KEY UPDATE`,
    [organisationId, meetId],
  );
  return meets.length > 0;
}

/** The caller holds the lock of the log. */
export async function append(tx: Tx, row: NewInspection): Promise<void> {
  const { organisationId, meetId, implementId } = row;
  const before = await managerOf(tx).countBy(Inspection, { organisationId, meetId, implementId });
  await managerOf(tx).insert(Inspection, { ...row, sequence: before + 1 });
}

export async function find(at: Reads, organisationId: string, id: string): Promise<InspectionRow | null> {
  return managerOf(at).findOneBy(Inspection, { organisationId, id });
}

/** The look that replaces this one; `null`: it counts. */
export async function replacementOf(
  at: Reads,
  organisationId: string,
  id: string,
): Promise<InspectionRow | null> {
  return managerOf(at).findOneBy(Inspection, { organisationId, replacesId: id });
}

/** Everything that was found of these implements at a meet, of each in the order of finding. */
export async function ofImplements(
  at: Reads,
  organisationId: string,
  meetId: string,
  implementIds: readonly string[],
): Promise<InspectionRow[]> {
  return managerOf(at).find(Inspection, {
    where: { organisationId, meetId, implementId: In([...implementIds]) },
    order: { implementId: 'ASC', sequence: 'ASC' },
  });
}
