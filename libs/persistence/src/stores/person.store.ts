import { Credential } from '../entities/credential.entity.js';
import { Person } from '../entities/person.entity.js';
import type { CredentialRow, PersonRow } from '../access-rows.js';
import { checkedFirst, isName, isUuid, pageOf, readCursor, type Page, type PageRequest } from '../page.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export type NewPerson = Omit<PersonRow, 'madeAt' | 'closedBy' | 'closedAt'>;

/** Throws a `unique` violation of `person_login_name_unique` when the login name is taken. */
export async function insert(tx: Tx, row: NewPerson): Promise<void> {
  await managerOf(tx).insert(Person, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<PersonRow | null> {
  return managerOf(at).findOneBy(Person, { organisationId, id });
}

export async function findByLoginName(
  at: Reads,
  organisationId: string,
  loginName: string,
): Promise<PersonRow | null> {
  return managerOf(at).findOneBy(Person, { organisationId, loginName });
}

/** Locks the person's row until the transaction ends: whoever changes a credential or sessions goes one by one. */
export async function lock(tx: Tx, organisationId: string, id: string): Promise<PersonRow | null> {
  return managerOf(tx).findOne(Person, {
    where: { organisationId, id },
    lock: { mode: 'pessimistic_write' },
  });
}

/** By login name. */
export async function page(
  at: Reads,
  organisationId: string,
  request: PageRequest,
): Promise<Page<PersonRow>> {
  const first = checkedFirst(request.first);
  const query = managerOf(at)
    .createQueryBuilder(Person, 'person')
    .where('person.organisationId = :organisationId', { organisationId })
    .orderBy({ 'person.loginName': 'ASC', 'person.id': 'ASC' })
    .limit(first + 1);
  if (typeof request.after === 'string') {
    const [loginName, id] = readCursor(request.after, [isName, isUuid]);
    query.andWhere('(person.loginName, person.id) > (:loginName, :id)', { loginName, id });
  }
  return pageOf(await query.getMany(), first, (row) => [row.loginName, row.id]);
}

/** Those of `ids` that there are, in no order. */
export async function byIds(at: Reads, organisationId: string, ids: readonly string[]): Promise<PersonRow[]> {
  return managerOf(at)
    .createQueryBuilder(Person, 'person')
    .where('person.organisationId = :organisationId AND person.id = ANY(:ids)', {
      organisationId,
      ids: [...ids],
    })
    .getMany();
}

/** Nobody signs in under this name any more. False: there is no such person, or the account was closed before. */
export async function close(tx: Tx, organisationId: string, id: string, closedBy: string): Promise<boolean> {
  const [, affected] = await managerOf(tx).query<[unknown, number]>(
    `UPDATE person SET closed_at = clock_timestamp(), closed_by = $3
      WHERE organisation_id = $1 AND id = $2 AND closed_at IS NULL`,
    [organisationId, id, closedBy],
  );
  return affected === 1;
}

/** What proves that somebody is this person; `null`: nothing was ever set. */
export async function credential(
  at: Reads,
  organisationId: string,
  personId: string,
): Promise<CredentialRow | null> {
  return managerOf(at).findOneBy(Credential, { organisationId, personId });
}

/** Puts a credential in the place of the one before, whole. */
export async function setCredential(tx: Tx, row: Omit<CredentialRow, 'changedAt'>): Promise<void> {
  await managerOf(tx).query(
    `INSERT INTO credential (organisation_id, person_id, password_hash, setup_hash, setup_expires_at)
     VALUES ($1, $2, $3, $4, $5)
     ON CONFLICT (organisation_id, person_id) DO UPDATE
       SET password_hash = excluded.password_hash, setup_hash = excluded.setup_hash,
           setup_expires_at = excluded.setup_expires_at, changed_at = clock_timestamp()`,
    [row.organisationId, row.personId, row.passwordHash, row.setupHash, row.setupExpiresAt],
  );
}
