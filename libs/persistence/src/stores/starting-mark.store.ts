import { StartingMark } from '../entities/starting-mark.entity.js';
import type { StartingMarkRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewStartingMark = Omit<StartingMarkRow, 'enteredAt'>;

/** So many rows in one statement: it takes 65,535 values at most. */
const AT_ONCE = 500;

/** Throws a `unique` violation of `starting_mark_replaced_once` when what one replaces has been replaced. */
export async function insert(tx: Tx, rows: readonly NewStartingMark[]): Promise<void> {
  for (let from = 0; from < rows.length; from += AT_ONCE) {
    await managerOf(tx).insert(StartingMark, rows.slice(from, from + AT_ONCE));
  }
}

export async function find(at: Reads, organisationId: string, id: string): Promise<StartingMarkRow | null> {
  return managerOf(at).findOneBy(StartingMark, { organisationId, id });
}

/** The mark that replaces this one; `null`: none does. */
export async function replacementOf(
  at: Reads,
  organisationId: string,
  id: string,
): Promise<StartingMarkRow | null> {
  return managerOf(at).findOneBy(StartingMark, { organisationId, replacesId: id });
}

/** What one import brought, line by line. */
export async function ofImport(
  at: Reads,
  organisationId: string,
  importId: string,
): Promise<StartingMarkRow[]> {
  return managerOf(at).find(StartingMark, {
    where: { organisationId, importId },
    order: { importLine: 'ASC' },
  });
}

/** In whose lists marks are looked for. */
export interface ListOwners {
  readonly clubs: readonly string[];
  readonly meets: readonly string[];
  readonly athletes: readonly string[];
}

/** The marks in lists of any of these that nothing replaces and that are not taken back, by day. */
export async function counting(
  at: Reads,
  organisationId: string,
  { clubs, meets, athletes }: ListOwners,
): Promise<StartingMarkRow[]> {
  return managerOf(at)
    .createQueryBuilder(StartingMark, 'mark')
    .where('mark.organisationId = :organisationId AND mark.counts', { organisationId })
    .andWhere(
      '(mark.clubId = ANY (:clubs::uuid[]) OR mark.meetId = ANY (:meets::uuid[]) OR mark.athleteId = ANY (:athletes::uuid[]))',
      { clubs, meets, athletes },
    )
    .andWhere(
      (query) =>
        `NOT EXISTS ${query
          .subQuery()
          .select('1')
          .from(StartingMark, 'later')
          .where('later.organisationId = mark.organisationId AND later.replacesId = mark.id')
          .getQuery()}`,
    )
    .orderBy({ 'mark.onDate': 'ASC', 'mark.id': 'ASC' })
    .getMany();
}
