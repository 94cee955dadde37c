import { In } from 'typeorm';
import { Athlete } from '../entities/athlete.entity.js';
import { checkedFirst, pageOf, readCursor, isName, isUuid, type Page, type PageRequest } from '../page.js';
import type { AthleteRow } from '../rows.js';
import { columns, execute, type Statement } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** Nobody is erased before he was there. */
export type NewAthlete = Omit<AthleteRow, 'erasedAt'>;
export type AthleteChanges = Partial<Omit<NewAthlete, 'organisationId' | 'id'>>;

export async function insert(tx: Tx, row: NewAthlete): Promise<void> {
  await managerOf(tx).insert(Athlete, row);
}

/** So many rows in one statement: it takes 65,535 values at most. */
const AT_ONCE = 2000;

export async function insertAll(tx: Tx, rows: readonly AthleteRow[]): Promise<void> {
  for (let from = 0; from < rows.length; from += AT_ONCE) {
    await managerOf(tx).insert(Athlete, rows.slice(from, from + AT_ONCE));
  }
}

/** Everybody on record, in no order: for whom to compare a table with. */
export async function all(at: Reads, organisationId: string): Promise<AthleteRow[]> {
  return execute<AthleteRow>(at, ALL, [organisationId]);
}

const ALL: Statement = {
  name: 'athletes_all',
  text: `SELECT ${columns(
    ...['organisationId', 'id', 'givenName', 'familyName', 'sex', 'birthDate', 'clubId'],
    ...['display', 'handedness', 'erasedAt'],
  )} FROM athlete WHERE organisation_id = $1`,
};

/** False: there is no such athlete. */
export async function update(
  tx: Tx,
  organisationId: string,
  id: string,
  changes: AthleteChanges,
): Promise<boolean> {
  if (Object.keys(changes).length === 0) return (await find(tx, organisationId, id)) !== null;
  const { affected } = await managerOf(tx).update(Athlete, { organisationId, id }, changes);
  return affected === 1;
}

export async function find(at: Reads, organisationId: string, id: string): Promise<AthleteRow | null> {
  return managerOf(at).findOneBy(Athlete, { organisationId, id });
}

/** Those of `ids` that there are, in no order. */
export async function byIds(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<AthleteRow[]> {
  return managerOf(at).findBy(Athlete, { organisationId, id: In([...ids]) });
}

/** What stays under which name when an athlete is erased: who somebody was is gone, what he did is not. */
export interface Pseudonym {
  readonly givenName: string;
  readonly familyName: string;
}

/** Takes everything away that says who the athlete is. False: there is no such athlete. */
export async function erase(
  tx: Tx,
  organisationId: string,
  id: string,
  pseudonym: Pseudonym,
): Promise<boolean> {
  const { affected } = await managerOf(tx).update(
    Athlete,
    { organisationId, id },
    { ...pseudonym, ...NOBODY, erasedAt: () => 'clock_timestamp()' },
  );
  return affected === 1;
}

const NOBODY = { birthDate: null, handedness: null, display: 'bib' } as const;

/** By family name, then given name. */
export async function page(
  at: Reads,
  organisationId: string,
  request: PageRequest,
): Promise<Page<AthleteRow>> {
  const first = checkedFirst(request.first);
  const query = managerOf(at)
    .createQueryBuilder(Athlete, 'athlete')
    .where('athlete.organisationId = :organisationId', { organisationId })
    .orderBy({ 'athlete.familyName': 'ASC', 'athlete.givenName': 'ASC', 'athlete.id': 'ASC' })
    .limit(first + 1);
  if (typeof request.after === 'string') {
    const [family, given, id] = readCursor(request.after, [isName, isName, isUuid]);
    query.andWhere('(athlete.familyName, athlete.givenName, athlete.id) > (:family, :given, :id)', {
      family,
      given,
      id,
    });
  }
  return pageOf(await query.getMany(), first, (row) => [row.familyName, row.givenName, row.id]);
}
