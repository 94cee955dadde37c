import { AgeFactors } from '../entities/age-factors.entity.js';
import type { AgeFactorsRow, EventCode } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its revision and its time. */
export type NewAgeFactors = Omit<AgeFactorsRow, 'revision' | 'setAt'>;

/** Adds a revision, which counts from now on. Null: there is no such meet. Holds the meet's lock from here on. */
export async function add(tx: Tx, row: NewAgeFactors): Promise<AgeFactorsRow | null> {
  const { organisationId, meetId, event } = row;
  const meets = await managerOf(tx).query<unknown[]>(
    `SELECT 1 FROM meet WHERE organisation_id = $1 AND id = $2 FOR NO KEY UPDATE`,
    [organisationId, meetId],
  );
  if (meets.length === 0) return null;
  const before = await latest(tx, organisationId, meetId, event);
  await managerOf(tx).insert(AgeFactors, { ...row, revision: (before?.revision ?? 0) + 1 });
  return latest(tx, organisationId, meetId, event);
}

/** What counts; `null`: nobody entered any. */
export async function latest(
  at: Reads,
  organisationId: string,
  meetId: string,
  event: EventCode,
): Promise<AgeFactorsRow | null> {
  return managerOf(at).findOne(AgeFactors, {
    where: { organisationId, meetId, event },
    order: { revision: 'DESC' },
  });
}
