import { persons, type Tx } from '#persistence';
import { hashOfCode, makeCode } from './passwords.js';

/** Long enough to be handed over at the next meeting. */
const HOLDS_MS = 7 * 24 * 60 * 60 * 1000;

export interface SetupCode {
  readonly code: string;
  readonly expiresAt: Date;
}

/** A new one-time code in the place of the one before; a password that there is stays until the code is used. */
export async function issueSetupCode(tx: Tx, organisationId: string, personId: string): Promise<SetupCode> {
  const code = makeCode();
  const expiresAt = new Date(Date.now() + HOLDS_MS);
  const known = await persons.credential(tx, organisationId, personId);
  await persons.setCredential(tx, {
    ...{ organisationId, personId, passwordHash: known?.passwordHash ?? null },
    ...{ setupHash: hashOfCode(code), setupExpiresAt: expiresAt.toISOString() },
  });
  return { code, expiresAt };
}
