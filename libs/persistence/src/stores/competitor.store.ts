import { In } from 'typeorm';
import { Competitor } from '../entities/competitor.entity.js';
import type { CompetitorRow } from '../rows.js';
import { execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export type CompetitorChanges = Partial<Omit<CompetitorRow, 'organisationId' | 'id' | 'competitionId'>>;

/*
 * Whoever changes a start list holds the competition's lock and bumps its version. Bibs and positions may clash on
 * the way; they are compared when the transaction ends.
 */

export async function insert(tx: Tx, rows: readonly CompetitorRow[]): Promise<void> {
  if (rows.length > 0) await managerOf(tx).insert(Competitor, [...rows]);
}

/** False: there is no such competitor. */
export async function update(
  tx: Tx,
  organisationId: string,
  id: string,
  changes: CompetitorChanges,
): Promise<boolean> {
  if (Object.keys(changes).length === 0) return (await find(tx, organisationId, id)) !== null;
  const { affected } = await managerOf(tx).update(Competitor, { organisationId, id }, changes);
  return affected === 1;
}

/** Gives the competitors the positions 1, 2, … in the order of `ids`. Returns how many there were. */
export async function reposition(
  tx: Tx,
  organisationId: string,
  competitionId: string,
  ids: readonly string[],
): Promise<number> {
  const [, affected] = await managerOf(tx).query<[unknown[], number]>(
    `UPDATE competitor SET position = wanted.position
       FROM unnest($3::uuid[]) WITH ORDINALITY AS wanted (id, position)
      WHERE competitor.organisation_id = $1 AND competitor.competition_id = $2 AND competitor.id = wanted.id`,
    [organisationId, competitionId, ids],
  );
  return affected;
}

/** Gives each of these competitors another bib. One statement; bibs may be exchanged. */
export async function setBibs(
  tx: Tx,
  organisationId: string,
  lines: readonly { readonly id: string; readonly bib: string }[],
): Promise<void> {
  if (lines.length === 0) return;
  await managerOf(tx).query(
    `UPDATE competitor SET bib = wanted.bib
       FROM unnest($2::uuid[], $3::text[]) AS wanted (id, bib)
      WHERE competitor.organisation_id = $1 AND competitor.id = wanted.id`,
    [organisationId, lines.map(({ id }) => id), lines.map(({ bib }) => bib)],
  );
}

/** As {@link reposition}, and sets the flight of each. One statement. */
export async function arrange(
  tx: Tx,
  organisationId: string,
  competitionId: string,
  lines: readonly { readonly id: string; readonly flight: string | null }[],
): Promise<void> {
  await managerOf(tx).query(
    `UPDATE competitor SET position = wanted.position, flight = wanted.flight
       FROM unnest($3::uuid[], $4::text[]) WITH ORDINALITY AS wanted (id, flight, position)
      WHERE competitor.organisation_id = $1 AND competitor.competition_id = $2 AND competitor.id = wanted.id`,
    [organisationId, competitionId, lines.map(({ id }) => id), lines.map(({ flight }) => flight)],
  );
}

/** Takes a competitor off the start list. False: there is no such competitor. */
export async function remove(tx: Tx, organisationId: string, id: string): Promise<boolean> {
  const { affected } = await managerOf(tx).delete(Competitor, { organisationId, id });
  return affected === 1;
}

export async function find(at: Reads, organisationId: string, id: string): Promise<CompetitorRow | null> {
  return managerOf(at).findOneBy(Competitor, { organisationId, id });
}

/** The start list in its order. */
export async function ofCompetition(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<CompetitorRow[]> {
  return managerOf(at).find(Competitor, {
    where: { organisationId, competitionId },
    order: { position: 'ASC' },
  });
}

/** The start lists of several competitions, each in its order. */
export async function ofCompetitions(
  at: Reads,
  organisationId: string,
  competitionIds: readonly string[],
): Promise<CompetitorRow[]> {
  return managerOf(at).find(Competitor, {
    where: { organisationId, competitionId: In([...competitionIds]) },
    order: { position: 'ASC' },
  });
}

/** Where an athlete has been entered. */
export async function ofAthlete(
  at: Reads,
  organisationId: string,
  athleteId: string,
): Promise<CompetitorRow[]> {
  return managerOf(at).find(Competitor, { where: { organisationId, athleteId }, order: { id: 'ASC' } });
}

/** Takes names off start lists: those of `ids`, and those written as one of `names`. Whose they were, and where. */
export async function eraseListedNames(
  tx: Tx,
  organisationId: string,
  { ids, names }: { readonly ids: readonly string[]; readonly names: readonly string[] },
): Promise<Pick<CompetitorRow, 'id' | 'competitionId'>[]> {
  const [rows] = await managerOf(tx).query<[Pick<CompetitorRow, 'id' | 'competitionId'>[], number]>(
    `UPDATE competitor SET listed_name = NULL
      WHERE organisation_id = $1 AND listed_name IS NOT NULL AND (id = ANY ($2) OR lower(listed_name) = ANY ($3))
      RETURNING id, competition_id AS "competitionId"`,
    [organisationId, ids, names.map((name) => name.toLowerCase())],
  );
  return rows;
}

/** Where an athlete competes, with the version that it has now. */
export interface EnteredCompetition {
  readonly id: string;
  readonly version: number;
}

/** The competitions of published meets in which the athlete is. */
export async function publishedOfAthlete(
  at: Reads,
  organisationId: string,
  athleteId: string,
): Promise<EnteredCompetition[]> {
  return execute<EnteredCompetition>(at, PUBLISHED_OF_ATHLETE, [organisationId, athleteId]);
}

const PUBLISHED_OF_ATHLETE: Statement = {
  name: 'competitor_published_of_athlete',
  text: `
    SELECT competition.id, competition.version FROM competitor
      JOIN competition ON competition.organisation_id = $1 AND competition.id = competition_id
      JOIN meet ON meet.organisation_id = $1 AND meet.id = meet_id
     WHERE competitor.organisation_id = $1 AND competitor.athlete_id = $2 AND published_at IS NOT NULL
     ORDER BY competition.id`,
};

/** One competitor of a published meet, by ids. */
export interface PublishedEntry {
  readonly meetId: string;
  readonly competitionId: string;
  readonly competitorId: string;
}

/**
 * Who competes for a club, or as an athlete, in the latest published meets in which anybody does: whole meets, the
 * latest first, competitions by time.
 */
export async function inPublishedMeets(
  at: Reads,
  organisationId: string,
  of: { readonly clubId: string } | { readonly athleteId: string },
  meets: number,
): Promise<PublishedEntry[]> {
  const [column, value] = 'clubId' in of ? ['club_id', of.clubId] : ['athlete_id', of.athleteId];
  return managerOf(at).query<PublishedEntry[]>(
    `WITH own AS (
       SELECT meet.id AS meet_id, meet.starts_on, competition.id AS competition_id, competition.starts_at,
              competition.title, competitor.id, competitor.position
         FROM competitor
         JOIN competition ON competition.id = competitor.competition_id
                         AND competition.organisation_id = competitor.organisation_id
         JOIN meet ON meet.id = competition.meet_id AND meet.organisation_id = competition.organisation_id
        WHERE competitor.organisation_id = $1 AND competitor.${column} = $2 AND meet.published_at IS NOT NULL
     ), latest AS (
       SELECT meet_id FROM own GROUP BY meet_id, starts_on ORDER BY starts_on DESC, meet_id DESC LIMIT $3
     )
     SELECT meet_id AS "meetId", competition_id AS "competitionId", id AS "competitorId"
       FROM own WHERE meet_id IN (SELECT meet_id FROM latest)
      ORDER BY starts_on DESC, meet_id DESC, starts_at ASC NULLS LAST, title, competition_id, position`,
    [organisationId, value, meets],
  );
}

/** An athlete of one competition who is entered in another one of the meet. */
export interface AlsoEntered {
  readonly athleteId: string;
  readonly competitionId: string;
  readonly title: string;
  readonly startsAt: string | null;
}

/** Where else at the meet the athletes of a competition are entered, the earliest first. */
export async function alsoEntered(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<AlsoEntered[]> {
  return managerOf(at).query<AlsoEntered[]>(
    `SELECT other.athlete_id AS "athleteId", elsewhere.id AS "competitionId", elsewhere.title,
            to_char(elsewhere.starts_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "startsAt"
       FROM competition AS here
       JOIN competitor AS own ON own.competition_id = here.id AND own.organisation_id = here.organisation_id
       JOIN competitor AS other
         ON other.athlete_id = own.athlete_id AND other.organisation_id = own.organisation_id
       JOIN competition AS elsewhere
         ON elsewhere.id = other.competition_id AND elsewhere.organisation_id = other.organisation_id
      WHERE here.organisation_id = $1 AND here.id = $2
        AND elsewhere.meet_id = here.meet_id AND elsewhere.id <> here.id
      ORDER BY elsewhere.starts_at NULLS LAST, elsewhere.title, elsewhere.id`,
    [organisationId, competitionId],
  );
}
