import { In } from 'typeorm';
import { PracticeSession } from '../entities/practice-session.entity.js';
import { PracticeThrow } from '../entities/practice-throw.entity.js';
import type { PracticeSessionRow, PracticeThrowRow } from '../notebook-rows.js';
import { columns, execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewPracticeSession = Omit<PracticeSessionRow, 'recordedAt'>;
export type NewPracticeThrow = Omit<PracticeThrowRow, 'recordedAt'>;

/** A throw as it counts, with the day of its session. */
export type CountingThrow = Omit<
  PracticeThrowRow,
  'device' | 'deviceAt' | 'recordedAt' | 'fingerprint' | 'reason' | 'loggedBy'
> & { readonly onDate: string; readonly place: string | null };

export async function insertSession(tx: Tx, row: NewPracticeSession): Promise<void> {
  await managerOf(tx).insert(PracticeSession, row);
}

export async function findSession(
  at: Reads,
  organisationId: string,
  id: string,
): Promise<PracticeSessionRow | null> {
  return managerOf(at).findOneBy(PracticeSession, { organisationId, id });
}

export async function sessionsByIds(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<PracticeSessionRow[]> {
  return managerOf(at).findBy(PracticeSession, { organisationId, id: In([...ids]) });
}

/** Throws a `unique` violation of `practice_throw_replaced_once` when what one replaces has been replaced. */
export async function insertThrows(tx: Tx, rows: readonly NewPracticeThrow[]): Promise<void> {
  if (rows.length > 0) await managerOf(tx).insert(PracticeThrow, [...rows]);
}

/** Rows by their own ids, and those that replace them. */
export async function throwRows(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<PracticeThrowRow[]> {
  const some = In([...ids]);
  return managerOf(at).find(PracticeThrow, {
    where: [
      { organisationId, id: some },
      { organisationId, replacesId: some },
    ],
  });
}

/** As they count now, of these throws by the ids that stay. */
export async function counting(
  at: Reads,
  organisationId: string,
  throwIds: readonly string[],
): Promise<CountingThrow[]> {
  return execute<CountingThrow>(at, COUNTING, [organisationId, throwIds]);
}

/** Everything of one athlete as it counts, by day, session and order. */
export async function ofAthlete(
  at: Reads,
  organisationId: string,
  athleteId: string,
): Promise<CountingThrow[]> {
  return execute<CountingThrow>(at, OF_ATHLETE, [organisationId, athleteId]);
}

/** Everything of one session as it counts, in the order of throwing. */
export async function ofSession(
  at: Reads,
  organisationId: string,
  sessionId: string,
): Promise<CountingThrow[]> {
  return execute<CountingThrow>(at, OF_SESSION, [organisationId, sessionId]);
}

const NAMES = columns(
  ...['throw.organisationId', 'throw.id', 'throwId', 'sessionId', 'athleteId', 'event', 'variant'],
  ...['implementGrams', 'round', 'outcome', 'mark', 'isMeasured', 'effortPercent', 'voidedOnPurpose'],
  ...['foul', 'wind', 'styles', 'release', 'isAnnulled', 'replacesId', 'onDate', 'place'],
).replaceAll('AS "throw.', 'AS "');

const FROM = `
  FROM practice_throw AS throw JOIN practice_session AS session ON session.organisation_id = $1 AND session.id = session_id
 WHERE throw.organisation_id = $1
   AND NOT EXISTS (SELECT FROM practice_throw AS later WHERE later.organisation_id = $1 AND later.replaces_id = throw.id)`;

const COUNTING: Statement = {
  name: 'practice_counting',
  text: `SELECT ${NAMES} ${FROM} AND throw_id = ANY ($2::uuid[])`,
};

const OF_ATHLETE: Statement = {
  name: 'practice_of_athlete',
  text: `SELECT ${NAMES} ${FROM} AND athlete_id = $2 ORDER BY on_date, session_id, round, throw.id`,
};

const OF_SESSION: Statement = {
  name: 'practice_of_session',
  text: `SELECT ${NAMES} ${FROM} AND session_id = $2 ORDER BY athlete_id, round, throw.id`,
};
