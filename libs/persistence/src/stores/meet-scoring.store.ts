import { MeetScoring } from '../entities/meet-scoring.entity.js';
import type { MeetScoringRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';
import { lock } from './meet.store.js';

/** The database gives it its revision and its time. */
export type NewMeetScoring = Omit<MeetScoringRow, 'revision' | 'setAt'>;

/** Adds a revision, which counts from now on. Null: there is no such meet. Holds the meet's lock from here on. */
export async function add(tx: Tx, row: NewMeetScoring): Promise<MeetScoringRow | null> {
  const { organisationId, meetId } = row;
  if (!(await lock(tx, organisationId, meetId))) return null;
  const before = await latest(tx, organisationId, meetId);
  await managerOf(tx).insert(MeetScoring, { ...row, revision: (before?.revision ?? 0) + 1 });
  return latest(tx, organisationId, meetId);
}

/** What counts; `null`: the meet is not scored. */
export async function latest(
  at: Reads,
  organisationId: string,
  meetId: string,
): Promise<MeetScoringRow | null> {
  return managerOf(at).findOne(MeetScoring, {
    where: { organisationId, meetId },
    order: { revision: 'DESC' },
  });
}
