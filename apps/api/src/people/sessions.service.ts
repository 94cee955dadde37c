import { persons, sessions, type PersonRow, type Tx } from '#persistence';
import { Injectable } from '@nestjs/common';
import { randomBytes } from 'node:crypto';
import { Database } from '../platform/database/database.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { AccessMemory } from '../platform/identity/access-memory.js';
import { Doorkeeper } from '../platform/identity/doorkeeper.js';
import type { Account, Identity } from '../platform/identity/identity.js';
import { hashOfCode, hashOfSecret, passwordProblem, Passwords } from '../platform/identity/passwords.js';
import { Throttle } from '../platform/identity/throttle.js';
import { Tokens } from '../platform/identity/tokens.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { PasswordChangeInput, PasswordSetUpInput, SignInInput } from './people.inputs.js';

/** What is stolen from a device's memory is good for so long at most. */
const ACCESS_S = 15 * 60;
/** Whoever does not come back for so long signs in again. */
const REFRESH_S = 14 * 24 * 60 * 60;

/** A session's tokens, as they are handed over once. */
export interface Opened {
  readonly accessToken: string;
  readonly accessExpiresAt: Date;
  readonly refreshToken: string;
  readonly refreshExpiresAt: Date;
  readonly person: PersonRow;
}

export type Refused = { readonly refusal: Refusal };

/** A session that stands in the database, with the secret whose hash stands there. */
interface Stored {
  readonly person: PersonRow;
  readonly sessionId: string;
  readonly label: string | null;
  readonly refreshToken: string;
  readonly refreshExpiresAt: Date;
}

const NOBODY = '00000000-0000-0000-0000-000000000000';

/** Signing in and out. What goes wrong says no more than that it went wrong, and takes as long as what goes right. */
@Injectable()
export class SessionsService {
  constructor(
    private readonly database: Database,
    private readonly access: AccessMemory,
    private readonly doorkeeper: Doorkeeper,
    private readonly passwords: Passwords,
    private readonly throttle: Throttle,
    private readonly tokens: Tokens,
  ) {}

  /** `address`: where the request came from. Throws RATE_LIMITED. */
  signIn(input: SignInInput, address: string): Promise<Opened | Refused> {
    return this.throttled(input.loginName, address, () => this.trySignIn(input));
  }

  private async trySignIn({ loginName, password, device }: SignInInput): Promise<Opened | Refused> {
    const { person, passwordHash } = await this.lookUp(loginName);
    const isRight = await this.passwords.matches(password, passwordHash);
    if (!isRight || !person) return { refusal: WRONG };
    const stored = await this.database.write(async (tx) => {
      // Closed, or another password, while this one was compared.
      const now = await persons.lock(tx, person.organisationId, person.id);
      const credential = await persons.credential(tx, person.organisationId, person.id);
      if (!now || now.closedAt !== null || credential?.passwordHash !== passwordHash) return null;
      return this.open(tx, now, device ?? null);
    });
    return stored ? this.handOver(stored) : { refusal: WRONG };
  }

  /** The same statements whether there is such a person or not. Nobody, too: closed, or of a demonstration elsewhere. */
  private async lookUp(
    loginName: string,
  ): Promise<{ readonly person: PersonRow | null; readonly passwordHash: string | null }> {
    const { organisationId } = this.doorkeeper.everybody;
    return this.database.read(async (at) => {
      const found = await persons.findByLoginName(at, organisationId, loginName);
      const credential = await persons.credential(at, organisationId, found?.id ?? NOBODY);
      const isOut = !found || found.closedAt !== null || (found.isDemo && !this.doorkeeper.isDemo);
      return isOut
        ? { person: null, passwordHash: null }
        : { person: found, passwordHash: credential?.passwordHash ?? null };
    });
  }

  /** Chooses a password with a one-time code, ends what sessions there are, and signs in. Throws RATE_LIMITED. */
  setUp(input: PasswordSetUpInput, address: string): Promise<Opened | Refused> {
    return this.throttled(input.loginName, address, () => this.trySetUp(input));
  }

  private async trySetUp(input: PasswordSetUpInput): Promise<Opened | Refused> {
    const { loginName, password } = input;
    const { person } = await this.lookUp(loginName);
    if (!person) return { refusal: CODE_WRONG };
    const { organisationId, id: personId } = person;
    const problem = weakness(password, loginName);
    // Made before anything is locked: it takes long.
    const passwordHash = problem ? null : await this.passwords.hash(password);
    const stored = await this.database.write(async (tx) => {
      const now = await persons.lock(tx, organisationId, personId);
      const credential = await persons.credential(tx, organisationId, personId);
      if (!now || now.closedAt !== null || !isCode(credential, input.setupCode))
        return { refusal: CODE_WRONG };
      if (passwordHash === null) return { refusal: problem! };
      const chosen = { passwordHash, setupHash: null, setupExpiresAt: null };
      await persons.setCredential(tx, { organisationId, personId, ...chosen });
      await sessions.endAll(tx, organisationId, personId, 'password');
      return this.open(tx, now, input.device ?? null);
    });
    return 'refusal' in stored ? stored : this.handOver(stored);
  }

  /** Another password; every other session of the person ends. Throws RATE_LIMITED. */
  async change(input: PasswordChangeInput, viewer: Identity, address: string): Promise<true | Refused> {
    const account = viewer.requireAccount();
    const changed = await this.throttled(account.loginName, address, () =>
      this.tryChange(input, viewer.organisationId, account),
    );
    if (changed === true) await this.access.changed(viewer.organisationId, account.personId);
    return changed;
  }

  private async tryChange(
    { current, password }: PasswordChangeInput,
    organisationId: string,
    { loginName, personId, sessionId }: Account,
  ): Promise<true | Refused> {
    const { passwordHash: stored } = await this.lookUp(loginName);
    if (!(await this.passwords.matches(current, stored))) return { refusal: CURRENT_WRONG };
    const problem = weakness(password, loginName);
    if (problem) return { refusal: problem };
    const passwordHash = await this.passwords.hash(password);
    return this.database.write(async (tx) => {
      await persons.lock(tx, organisationId, personId);
      const credential = await persons.credential(tx, organisationId, personId);
      if (credential?.passwordHash !== stored) return { refusal: CURRENT_WRONG };
      const chosen = { passwordHash, setupHash: null, setupExpiresAt: null };
      await persons.setCredential(tx, { organisationId, personId, ...chosen });
      await sessions.endAll(tx, organisationId, personId, 'password', sessionId);
      return true;
    });
  }

  /**
   * The next access token and the next refresh token. One that was used before ends the session: either it was stolen,
   * or what replaced it was. Throws RATE_LIMITED.
   */
  async refresh(refreshToken: string, address: string): Promise<Opened | Refused> {
    const { organisationId } = this.doorkeeper.everybody;
    const attempt = () => this.tryRefresh(organisationId, hashOfSecret(refreshToken));
    return this.throttle.attempt([`address ${address}`], attempt, (outcome) => 'refusal' in outcome);
  }

  private async tryRefresh(organisationId: string, hash: string): Promise<Opened | Refused> {
    const outcome = await this.database.write(async (tx) => {
      const token = await sessions.findRefreshToken(tx, organisationId, hash);
      const session = token && (await sessions.lock(tx, organisationId, token.sessionId));
      if (!token || !session || session.endedAt !== null) return null;
      if (token.generation !== session.generation) {
        await sessions.end(tx, organisationId, session.id, 'reuse');
        return { endedOf: session.personId };
      }
      const person = await persons.find(tx, organisationId, session.personId);
      const isOut = !person || person.closedAt !== null || (person.isDemo && !this.doorkeeper.isDemo);
      if (isOut || Date.parse(token.expiresAt) <= this.tokens.nowS() * 1000) return null;
      return this.next(tx, person, session.id, session.label, session.generation + 1);
    });
    if (outcome === null) return { refusal: SESSION_ENDED };
    if ('endedOf' in outcome) {
      await this.access.changed(organisationId, outcome.endedOf);
      return { refusal: SESSION_ENDED };
    }
    return this.handOver(outcome, false);
  }

  /** Ends the session, or all of the person; a token of a post or a device is revoked. */
  async signOut(viewer: Identity, isEverywhere: boolean): Promise<void> {
    const { organisationId, account } = viewer;
    const holder = viewer.holder!;
    if (!account) {
      const row = { organisationId, tokenId: holder, reason: 'signed out', revokedBy: holder };
      await this.database.write((tx) => sessions.revokeToken(tx, row));
      return this.access.revoke(holder);
    }
    const { personId, sessionId } = account;
    await this.database.write((tx) =>
      isEverywhere
        ? sessions.endAll(tx, organisationId, personId, 'everywhere')
        : sessions.end(tx, organisationId, sessionId, 'signed-out'),
    );
    await this.access.changed(organisationId, personId);
  }

  private throttled<T>(
    loginName: string,
    address: string,
    attempt: () => Promise<T | Refused>,
  ): Promise<T | Refused> {
    const hasFailed = (outcome: T | Refused): boolean =>
      isRefused(outcome) && outcome.refusal.code !== 'PASSWORD_WEAK';
    return this.throttle.attempt([`account ${loginName}`, `address ${address}`], attempt, hasFailed);
  }

  private async open(tx: Tx, person: PersonRow, label: string | null): Promise<Stored> {
    const sessionId = uuidV7();
    const { organisationId, id: personId } = person;
    await sessions.insert(tx, { organisationId, id: sessionId, personId, label });
    return this.next(tx, person, sessionId, label, 1);
  }

  private async next(
    tx: Tx,
    person: PersonRow,
    sessionId: string,
    label: string | null,
    generation: number,
  ): Promise<Stored> {
    const refreshToken = randomBytes(32).toString('base64url');
    const refreshExpiresAt = new Date((this.tokens.nowS() + REFRESH_S) * 1000);
    await sessions.addRefreshToken(tx, {
      organisationId: person.organisationId,
      hash: hashOfSecret(refreshToken),
      ...{ sessionId, generation, expiresAt: refreshExpiresAt.toISOString() },
    });
    return { person, sessionId, label, refreshToken, refreshExpiresAt };
  }

  /** After the commit. `isNew`: the sessions of the person are others than before. */
  private async handOver(stored: Stored, isNew = true): Promise<Opened> {
    const { person, sessionId, label, refreshToken, refreshExpiresAt } = stored;
    const { organisationId, id: personId } = person;
    if (isNew) await this.access.changed(organisationId, personId);
    const untilS = Math.floor(this.tokens.nowS()) + ACCESS_S;
    const claims = { personId, sessionId, organisationId, label, untilS };
    const accessToken = await this.tokens.issueForSession(claims);
    const accessExpiresAt = new Date(untilS * 1000);
    return { accessToken, accessExpiresAt, refreshToken, refreshExpiresAt, person };
  }
}

function isRefused(outcome: unknown): outcome is Refused {
  return typeof outcome === 'object' && outcome !== null && 'refusal' in outcome;
}

function isCode(
  credential: { readonly setupHash: string | null; readonly setupExpiresAt: string | null } | null,
  code: string,
): boolean {
  if (!credential?.setupHash || !credential.setupExpiresAt) return false;
  return Date.parse(credential.setupExpiresAt) > Date.now() && credential.setupHash === hashOfCode(code);
}

function weakness(password: string, loginName: string): Refusal | null {
  const message = passwordProblem(password, loginName);
  if (message === null) return null;
  const remedy = 'Choose a longer one: a few words that only you put together are good.';
  return refusal({ code: 'PASSWORD_WEAK', path: ['password'], message, remedy });
}

const WRONG = refusal({
  code: 'WRONG_CREDENTIALS',
  message: 'The login name and the password do not belong together.',
  remedy: 'Look at both again; an administrator can issue a new one-time code.',
});

const CODE_WRONG = refusal({
  code: 'WRONG_CREDENTIALS',
  message: 'The login name and the code do not belong together, or the code was used or has run out.',
  remedy: 'Look at both again, or ask whoever made the account for another code.',
});

const CURRENT_WRONG = refusal({
  code: 'WRONG_CREDENTIALS',
  path: ['current'],
  message: 'This is not the password that holds now.',
  remedy: 'Type it again.',
});

const SESSION_ENDED = refusal({
  code: 'SESSION_ENDED',
  path: ['refreshToken'],
  message: 'The session has ended, or the token was used before.',
  remedy: 'Sign in again.',
});
