import { In } from 'typeorm';
import { Observation } from '../entities/observation.entity.js';
import type { ObservationRow } from '../notebook-rows.js';
import { columns, execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewObservation = Omit<ObservationRow, 'recordedAt'>;

/** What counts of an observation. */
export type CountingObservation = Omit<
  ObservationRow,
  'device' | 'deviceAt' | 'recordedAt' | 'fingerprint' | 'reason'
>;

/** Throws a `unique` violation of `observation_replaced_once` when what one replaces has been replaced. */
export async function insert(tx: Tx, rows: readonly NewObservation[]): Promise<void> {
  if (rows.length > 0) await managerOf(tx).insert(Observation, [...rows]);
}

/** Rows by their own ids, and those that replace them. */
export async function byIds(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<ObservationRow[]> {
  const some = In([...ids]);
  return managerOf(at).find(Observation, {
    where: [
      { organisationId, id: some },
      { organisationId, replacesId: some },
    ],
  });
}

/** Everything that counts of one athlete, in the order of observing. */
export async function ofAthlete(
  at: Reads,
  organisationId: string,
  athleteId: string,
): Promise<CountingObservation[]> {
  return execute<CountingObservation>(at, OF_ATHLETE, [organisationId, athleteId]);
}

/** Everything that counts of one competition, in the order of observing. */
export async function ofCompetition(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<CountingObservation[]> {
  return execute<CountingObservation>(at, OF_COMPETITION, [organisationId, competitionId]);
}

const NAMES = columns(
  ...['organisationId', 'id', 'athleteId', 'event', 'practiceThrowId', 'competitionId', 'competitorId'],
  ...[
    'round',
    'observerId',
    'observedAt',
    'method',
    'markKnown',
    'view',
    'checklist',
    'checklistVersion',
    'scope',
  ],
  ...['marks', 'edition', 'note', 'isWithdrawn', 'replacesId'],
);

const SELECT = `
  SELECT ${NAMES}
    FROM observation AS seen
   WHERE organisation_id = $1 AND NOT is_withdrawn
     AND NOT EXISTS (SELECT FROM observation AS later WHERE later.organisation_id = $1 AND later.replaces_id = seen.id)`;

const OF_ATHLETE: Statement = {
  name: 'observation_of_athlete',
  text: `${SELECT} AND athlete_id = $2 ORDER BY observed_at, id`,
};

const OF_COMPETITION: Statement = {
  name: 'observation_of_competition',
  text: `${SELECT} AND competition_id = $2 ORDER BY observed_at, id`,
};
