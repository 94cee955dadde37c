import { Crew } from '../entities/crew.entity.js';
import type { CrewRow } from '../timetable-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewCrew = Omit<CrewRow, 'setAt'>;

/** The caller holds the competition's lock. */
export async function insert(tx: Tx, row: NewCrew): Promise<void> {
  await managerOf(tx).insert(Crew, row);
}

/** What counts; `null`: nobody is named. */
export async function latest(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<CrewRow | null> {
  return managerOf(at).findOne(Crew, {
    where: { organisationId, competitionId },
    order: { revision: 'DESC' },
  });
}
