import { LoginSession } from '../entities/login-session.entity.js';
import { RefreshToken } from '../entities/refresh-token.entity.js';
import { TokenRevocation } from '../entities/token-revocation.entity.js';
import type { LoginSessionRow, RefreshTokenRow, SessionEnd } from '../access-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export type NewSession = Pick<LoginSessionRow, 'organisationId' | 'id' | 'personId' | 'label'>;

export async function insert(tx: Tx, row: NewSession): Promise<void> {
  await managerOf(tx).insert(LoginSession, row);
}

/** Locks a session until the transaction ends, so that of two that come with the same token one is the second. */
export async function lock(tx: Tx, organisationId: string, id: string): Promise<LoginSessionRow | null> {
  return managerOf(tx).findOne(LoginSession, {
    where: { organisationId, id },
    lock: { mode: 'pessimistic_write' },
  });
}

/** Ids of the sessions of a person that have not ended. */
export async function openOf(at: Reads, organisationId: string, personId: string): Promise<string[]> {
  const rows = await managerOf(at).query<{ id: string }[]>(
    `SELECT id FROM login_session WHERE organisation_id = $1 AND person_id = $2 AND ended_at IS NULL`,
    [organisationId, personId],
  );
  return rows.map(({ id }) => id);
}

export async function end(tx: Tx, organisationId: string, id: string, because: SessionEnd): Promise<void> {
  await managerOf(tx).query(
    `UPDATE login_session SET ended_at = clock_timestamp(), ended_because = $3
      WHERE organisation_id = $1 AND id = $2 AND ended_at IS NULL`,
    [organisationId, id, because],
  );
}

/** Ends every session of a person but the one to be kept, if any. */
export async function endAll(
  tx: Tx,
  organisationId: string,
  personId: string,
  because: SessionEnd,
  keptId: string | null = null,
): Promise<void> {
  await managerOf(tx).query(
    `UPDATE login_session SET ended_at = clock_timestamp(), ended_because = $3
      WHERE organisation_id = $1 AND person_id = $2 AND ended_at IS NULL AND id IS DISTINCT FROM $4::uuid`,
    [organisationId, personId, because, keptId],
  );
}

export async function findRefreshToken(
  at: Reads,
  organisationId: string,
  hash: string,
): Promise<RefreshTokenRow | null> {
  return managerOf(at).findOneBy(RefreshToken, { organisationId, hash });
}

/** The session's next refresh token; the one before counts as used from now on. */
export async function addRefreshToken(tx: Tx, row: Omit<RefreshTokenRow, 'madeAt'>): Promise<void> {
  const { organisationId, sessionId, generation } = row;
  await managerOf(tx).insert(RefreshToken, row);
  await managerOf(tx).update(LoginSession, { organisationId, id: sessionId }, { generation });
}

export interface NewTokenRevocation {
  readonly organisationId: string;
  readonly tokenId: string;
  readonly reason: string;
  readonly revokedBy: string;
}

/** Throws a `unique` violation of `token_revocation_pkey` when the token was revoked before. */
export async function revokeToken(tx: Tx, row: NewTokenRevocation): Promise<void> {
  await managerOf(tx).insert(TokenRevocation, row);
}

/** Ids of everything outside accounts that does not hold any more: tokens, and device links. */
export async function revokedIds(at: Reads): Promise<string[]> {
  const rows = await managerOf(at).query<{ id: string }[]>(
    `SELECT token_id AS id FROM token_revocation UNION ALL SELECT link_id FROM device_link_revocation`,
  );
  return rows.map(({ id }) => id);
}
