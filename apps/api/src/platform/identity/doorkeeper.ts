import { unauthenticated } from '../errors/api-error.js';
import type { AccessMemory } from './access-memory.js';
import { Identity, type Account } from './identity.js';
import type { Bearer, Tokens } from './tokens.js';

type Of<K extends Bearer['kind']> = Extract<Bearer, { kind: K }>;

const INVALID = 'The token is not valid here; ask for a new one.';

/** Says who shows a token, if it still holds: not revoked, its session not ended, its account not closed. */
export class Doorkeeper {
  private readonly known = new WeakMap<Bearer, Identity>();

  constructor(
    private readonly tokens: Tokens,
    private readonly memory: AccessMemory,
    /** Whether what was made for the demonstration holds: its tokens and its people. */
    readonly isDemo: boolean,
  ) {}

  get everybody(): Identity {
    return this.tokens.everybody;
  }

  /** Who holds this token. Throws UNAUTHENTICATED when it was not made here or nothing in it holds any more. */
  async identify(token: string): Promise<Identity> {
    const bearer = await this.tokens.read(token);
    if (!bearer) throw unauthenticated(INVALID);
    return bearer.kind === 'post' ? this.post(bearer) : this.person(bearer);
  }

  private async post(bearer: Of<'post'>): Promise<Identity> {
    const { holder, linkId, organisationId, grants, label, isDemo } = bearer;
    if ((isDemo && !this.isDemo) || (await this.memory.isRevoked(holder, linkId)))
      throw unauthenticated(INVALID);
    const identity = this.remembered(
      bearer,
      () => new Identity(holder, organisationId, grants, label, this.tokens.nowS),
    );
    if (identity.open().length === 0) {
      throw unauthenticated('Nothing that this token allows holds at this moment; ask for a new one.');
    }
    return identity;
  }

  /** A person without a role is still one: to change the password, and to see that there is no role. */
  private async person(bearer: Of<'session'>): Promise<Identity> {
    const { personId, sessionId, organisationId, label } = bearer;
    const access = await this.memory.person(organisationId, personId, sessionId);
    if (!access || access.isClosed || (access.isDemo && !this.isDemo) || !access.sessions.has(sessionId))
      throw unauthenticated('The session has ended; sign in again.');
    const { loginName, displayName } = access;
    return this.remembered(bearer, () => {
      const account: Account = { personId, sessionId, loginName, displayName };
      const given = () => this.memory.grantsOf(organisationId, personId, sessionId);
      return new Identity(personId, organisationId, given, label, this.tokens.nowS, account);
    });
  }

  private remembered(bearer: Bearer, make: () => Identity): Identity {
    const known = this.known.get(bearer) ?? make();
    this.known.set(bearer, known);
    return known;
  }
}
