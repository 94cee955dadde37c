import { SignJWT, jwtVerify } from 'jose';
import { unauthenticated } from '../errors/api-error.js';
import { readUuid } from '../scalars/uuid.js';
import { ROLES, type Grant } from './grant.js';
import { Identity } from './identity.js';

const ISSUER = 'sectorline';
const REMEMBERED = 4096;

export interface TokenClaims {
  readonly holder: string;
  readonly organisationId: string;
  readonly grants: readonly Grant[];
  /** What the token is called, e.g. "Circle 2 tablet": of a device or a post, not of a person. */
  readonly label: string;
}

/** Signs and reads tokens (JWT, RFC 7519, HS256). Grants carry their own windows. */
export class Tokens {
  /** Verified tokens: signature and form do not change, windows are looked at on every use. */
  private readonly verified = new Map<string, Identity>();

  /** Whoever shows no token. */
  readonly everybody: Identity;

  constructor(
    private readonly key: Uint8Array,
    homeOrganisationId: string,
    private readonly nowS: () => number = () => Date.now() / 1000,
  ) {
    this.everybody = new Identity(null, homeOrganisationId, []);
  }

  async issue({ holder, organisationId, grants, label }: TokenClaims): Promise<string> {
    return new SignJWT({ org: organisationId, grants, label })
      .setProtectedHeader({ alg: 'HS256', typ: 'JWT' })
      .setIssuer(ISSUER)
      .setSubject(holder)
      .setIssuedAt(Math.floor(this.nowS()))
      .sign(this.key);
  }

  /** Who holds this token. Throws UNAUTHENTICATED when it was not made here or nothing in it holds any more. */
  async read(token: string): Promise<Identity> {
    const identity = this.verified.get(token) ?? (await this.verify(token));
    if (identity.open().length === 0) {
      throw unauthenticated('Nothing that this token allows holds at this moment; ask for a new one.');
    }
    return identity;
  }

  private async verify(token: string): Promise<Identity> {
    const identity = await this.decode(token).catch(() => null);
    if (!identity) throw unauthenticated('The token is not valid here; ask for a new one.');
    const oldest = this.verified.keys().next();
    if (this.verified.size >= REMEMBERED && !oldest.done) this.verified.delete(oldest.value);
    this.verified.set(token, identity);
    return identity;
  }

  private async decode(token: string): Promise<Identity | null> {
    const { payload } = await jwtVerify(token, this.key, { algorithms: ['HS256'], issuer: ISSUER });
    const { sub, org, grants, label } = payload;
    if (typeof sub !== 'string' || !readUuid(sub) || typeof org !== 'string' || !readUuid(org)) return null;
    if (typeof label !== 'string' || !Array.isArray(grants) || !grants.every(isGrant)) return null;
    return new Identity(sub, org, grants, label, this.nowS);
  }
}

function isGrant(value: unknown): value is Grant {
  const { role, on, scope, from, until } = value as Record<keyof Grant, unknown>;
  const isMoment = (moment: unknown): boolean => moment === null || typeof moment === 'number';
  return (
    (ROLES as readonly unknown[]).includes(role) &&
    (on === null || typeof on === 'string') &&
    (scope === undefined || (scope === 'calling-group' && role === 'official')) &&
    isMoment(from) &&
    isMoment(until)
  );
}
