import { Timetable } from '../entities/timetable.entity.js';
import type { TimetableRow } from '../timetable-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewTimetable = Omit<TimetableRow, 'setAt'>;

/** Takes the meet's lock, so that revisions follow each other. False: there is no such meet. */
export async function lockMeet(tx: Tx, organisationId: string, meetId: string): Promise<boolean> {
  const meets = await managerOf(tx).query<unknown[]>(
    `SELECT 1 FROM meet WHERE organisation_id = $1 AND id = $2 FOR NO KEY UPDATE`,
    [organisationId, meetId],
  );
  return meets.length > 0;
}

export async function insert(tx: Tx, row: NewTimetable): Promise<void> {
  await managerOf(tx).insert(Timetable, row);
}

/** What counts; `null`: the meet has no timetable. */
export async function latest(
  at: Reads,
  organisationId: string,
  meetId: string,
): Promise<TimetableRow | null> {
  return managerOf(at).findOne(Timetable, {
    where: { organisationId, meetId },
    order: { revision: 'DESC' },
  });
}

/** Every plan that the meet has had, the first one first. */
export async function revisions(at: Reads, organisationId: string, meetId: string): Promise<TimetableRow[]> {
  return managerOf(at).find(Timetable, { where: { organisationId, meetId }, order: { revision: 'ASC' } });
}
