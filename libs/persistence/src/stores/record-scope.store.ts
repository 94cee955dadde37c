import { In } from 'typeorm';
import { Athlete } from '../entities/athlete.entity.js';
import { Club } from '../entities/club.entity.js';
import { Competition } from '../entities/competition.entity.js';
import { Competitor } from '../entities/competitor.entity.js';
import { Meet } from '../entities/meet.entity.js';
import type { AthleteRow, ClubRow, CompetitionRow, EventCode, MeetRow } from '../rows.js';
import { managerOf, type Reads } from '../transaction.js';
import type { ListOwners } from './starting-mark.store.js';

/** All meets of an organisation: which of them are one through the years their names say. */
export async function allMeets(at: Reads, organisationId: string): Promise<MeetRow[]> {
  return managerOf(at).find(Meet, { where: { organisationId }, order: { startsOn: 'ASC', id: 'ASC' } });
}

/**
 * The competitions whose marks can stand in lists of any of these: those of the meets, and those in which somebody
 * competed for one of the clubs, or one of the athletes did.
 * @param event `null`: whatever is contested
 */
export async function competitionsWith(
  at: Reads,
  organisationId: string,
  { clubs, meets, athletes }: ListOwners,
  event: EventCode | null,
): Promise<CompetitionRow[]> {
  const query = managerOf(at)
    .createQueryBuilder(Competition, 'competition')
    .where('competition.organisationId = :organisationId', { organisationId });
  const entered = query
    .subQuery()
    .select('competitor.competitionId')
    .from(Competitor, 'competitor')
    .where('competitor.organisationId = :organisationId')
    .andWhere('(competitor.clubId = ANY (:clubs::uuid[]) OR competitor.athleteId = ANY (:athletes::uuid[]))');
  query.andWhere(`(competition.meetId = ANY (:meets::uuid[]) OR competition.id IN ${entered.getQuery()})`, {
    clubs,
    meets,
    athletes,
  });
  if (event !== null) query.andWhere('competition.event = :event', { event });
  return query.orderBy({ 'competition.id': 'ASC' }).getMany();
}

/** The clubs of these names. */
export async function clubsNamed(
  at: Reads,
  organisationId: string,
  names: readonly string[],
): Promise<ClubRow[]> {
  return managerOf(at).findBy(Club, { organisationId, name: In([...names]) });
}

/** Everybody on record who has one of these family names or ids. */
export async function athletesNamed(
  at: Reads,
  organisationId: string,
  familyNames: readonly string[],
  ids: readonly string[],
): Promise<AthleteRow[]> {
  return managerOf(at).findBy(Athlete, [
    { organisationId, familyName: In([...familyNames]) },
    { organisationId, id: In([...ids]) },
  ]);
}
