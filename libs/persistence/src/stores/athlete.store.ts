import { In } from 'typeorm';
import { Athlete } from '../entities/athlete.entity.js';
import { checkedFirst, pageOf, readCursor, isName, isUuid, type Page, type PageRequest } from '../page.js';
import type { AthleteRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** Nobody is erased before he was there. */
export type NewAthlete = Omit<AthleteRow, 'erasedAt'>;
export type AthleteChanges = Partial<Omit<NewAthlete, 'organisationId' | 'id'>>;

export async function insert(tx: Tx, row: NewAthlete): Promise<void> {
  await managerOf(tx).insert(Athlete, row);
}

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
