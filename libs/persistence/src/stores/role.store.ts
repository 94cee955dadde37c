import { RoleGrant } from '../entities/role-grant.entity.js';
import { RoleRevocation } from '../entities/role-revocation.entity.js';
import type { RoleGrantRow, RoleRow } from '../access-rows.js';
import { columns } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export type NewRoleGrant = Omit<RoleGrantRow, 'givenAt'>;

export interface NewRoleRevocation {
  readonly organisationId: string;
  readonly grantId: string;
  readonly reason: string;
  readonly revokedBy: string;
}

export async function give(tx: Tx, row: NewRoleGrant): Promise<void> {
  await managerOf(tx).insert(RoleGrant, row);
}

/** Throws a `unique` violation of `role_revocation_pkey` when the grant was taken away before. */
export async function revoke(tx: Tx, row: NewRoleRevocation): Promise<void> {
  await managerOf(tx).insert(RoleRevocation, row);
}

const SELECT = `
  SELECT ${columns('id', 'personId', 'role', 'meetId', 'competitionId', 'callingGroupId', 'athleteId', 'startsAt', 'endsAt', 'givenBy', 'givenAt')},
         role_grant.organisation_id AS "organisationId", role_grant.reason,
         revoked_at AS "revokedAt", revoked_by AS "revokedBy", role_revocation.reason AS "revokedBecause"
    FROM role_grant LEFT JOIN role_revocation
      ON role_revocation.organisation_id = role_grant.organisation_id AND grant_id = id`;

export async function find(at: Reads, organisationId: string, id: string): Promise<RoleRow | null> {
  const rows = await managerOf(at).query<RoleRow[]>(
    `${SELECT} WHERE role_grant.organisation_id = $1 AND id = $2`,
    [organisationId, id],
  );
  return rows[0] ?? null;
}

/** Everything these persons were ever given, in the order of giving. */
export async function ofPersons(
  at: Reads,
  organisationId: string,
  personIds: readonly string[],
): Promise<RoleRow[]> {
  return managerOf(at).query<RoleRow[]>(
    `${SELECT} WHERE role_grant.organisation_id = $1 AND person_id = ANY($2) ORDER BY given_at, id`,
    [organisationId, personIds],
  );
}

/** Everything that was ever given at a meet: for it, its competitions and its calling groups. */
export async function ofMeet(at: Reads, organisationId: string, meetId: string): Promise<RoleRow[]> {
  return managerOf(at).query<RoleRow[]>(
    `${SELECT} WHERE role_grant.organisation_id = $1 AND (meet_id = $2
        OR competition_id IN (SELECT id FROM competition WHERE organisation_id = $1 AND meet_id = $2)
        OR calling_group_id IN (SELECT id FROM calling_group WHERE organisation_id = $1 AND meet_id = $2))
      ORDER BY given_at, id`,
    [organisationId, meetId],
  );
}

/** Whether anybody real administers the installation: a grant that holds, of an account that is open. */
export async function isAdministered(at: Reads, organisationId: string): Promise<boolean> {
  const rows = await managerOf(at).query<unknown[]>(
    `SELECT 1 FROM role_grant JOIN person USING (organisation_id)
      WHERE organisation_id = $1 AND role = 'admin' AND person.id = person_id AND NOT is_demo AND closed_at IS NULL
        AND NOT EXISTS (SELECT FROM role_revocation AS gone
                         WHERE gone.organisation_id = role_grant.organisation_id AND gone.grant_id = role_grant.id)
      LIMIT 1`,
    [organisationId],
  );
  return rows.length > 0;
}
