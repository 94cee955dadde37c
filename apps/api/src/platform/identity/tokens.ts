import { createHmac, timingSafeEqual } from 'node:crypto';
import { SignJWT, jwtVerify, type JWTPayload } from 'jose';
import { readUuid } from '../scalars/uuid.js';
import { ROLES, type Grant } from './grant.js';
import { Identity } from './identity.js';

const ISSUER = 'sectorline';
const REMEMBERED = 4096;

/** A token of a post or a device: it says itself what it allows. */
export interface TokenClaims {
  /** Also the token's own id, under which it is revoked. */
  readonly holder: string;
  readonly organisationId: string;
  readonly grants: readonly Grant[];
  /** What the token is called, e.g. "Circle 2 tablet": of a device or a post, not of a person. */
  readonly label: string;
  /** The device link that it came from: it ends with the link. */
  readonly linkId?: string | null;
  /** Holds nowhere but in a demonstration. */
  readonly isDemo?: boolean;
}

/** A token of a person who signed in. It says who and in which session, and nothing of rights: those are looked up. */
export interface SessionClaims {
  readonly personId: string;
  readonly sessionId: string;
  readonly organisationId: string;
  /** What the person calls the device. */
  readonly label: string | null;
  /** Seconds since the epoch. */
  readonly untilS: number;
}

export type Bearer =
  | ({ readonly kind: 'post' } & TokenClaims)
  | ({ readonly kind: 'session' } & SessionClaims);

/** Signs and reads tokens (JWT, RFC 7519, HS256). Whether what they say still holds is the doorkeeper's to know. */
export class Tokens {
  /** Verified tokens: signature and form do not change. */
  private readonly verified = new Map<string, Bearer>();

  /** Whoever shows no token. */
  readonly everybody: Identity;

  constructor(
    private readonly key: Uint8Array,
    homeOrganisationId: string,
    readonly nowS: () => number = () => Date.now() / 1000,
  ) {
    this.everybody = new Identity(null, homeOrganisationId, []);
  }

  async issue({ holder, organisationId, grants, label, linkId, isDemo }: TokenClaims): Promise<string> {
    return new SignJWT({
      org: organisationId,
      grants,
      label,
      ...(linkId && { link: linkId }),
      ...(isDemo && { demo: true }),
    })
      .setProtectedHeader({ alg: 'HS256', typ: 'JWT' })
      .setIssuer(ISSUER)
      .setSubject(holder)
      .setJti(holder)
      .setIssuedAt(Math.floor(this.nowS()))
      .sign(this.key);
  }

  async issueForSession({
    personId,
    sessionId,
    organisationId,
    label,
    untilS,
  }: SessionClaims): Promise<string> {
    return new SignJWT({ org: organisationId, sid: sessionId, label })
      .setProtectedHeader({ alg: 'HS256', typ: 'JWT' })
      .setIssuer(ISSUER)
      .setSubject(personId)
      .setIssuedAt(Math.floor(this.nowS()))
      .setExpirationTime(untilS)
      .sign(this.key);
  }

  /** What a token says, if it was signed here and a session's has not run out; null otherwise. */
  async read(token: string): Promise<Bearer | null> {
    const known = this.verified.get(token);
    const bearer = known ?? (await this.decode(token).catch(() => null));
    if (!bearer || (bearer.kind === 'session' && bearer.untilS <= this.nowS())) return null;
    if (!known) this.remember(token, bearer);
    return bearer;
  }

  /** Proof that something was made here: 24 bytes of the HMAC of a text, under a key of its own purpose. */
  seal(purpose: string, text: string): Buffer {
    const key = createHmac('sha256', this.key).update(purpose).digest();
    return createHmac('sha256', key).update(text).digest().subarray(0, 24);
  }

  isSealed(purpose: string, text: string, seal: Uint8Array): boolean {
    const right = this.seal(purpose, text);
    return seal.length === right.length && timingSafeEqual(right, seal);
  }

  private remember(token: string, bearer: Bearer): void {
    const oldest = this.verified.keys().next();
    if (this.verified.size >= REMEMBERED && !oldest.done) this.verified.delete(oldest.value);
    this.verified.set(token, bearer);
  }

  private async decode(token: string): Promise<Bearer | null> {
    const { payload } = await jwtVerify(token, this.key, {
      algorithms: ['HS256'],
      issuer: ISSUER,
      currentDate: new Date(this.nowS() * 1000),
    });
    return payload.sid === undefined ? postOf(payload) : sessionOf(payload);
  }
}

function postOf({ sub, jti, org, grants, label, link, demo }: JWTPayload): Bearer | null {
  if (!isUuid(sub) || !isUuid(org) || (jti !== undefined && jti !== sub)) return null;
  if (typeof label !== 'string' || !Array.isArray(grants) || !grants.every(isGrant)) return null;
  if (link !== undefined && !isUuid(link)) return null;
  return {
    kind: 'post',
    holder: sub,
    organisationId: org,
    grants,
    label,
    linkId: link ?? null,
    isDemo: demo === true,
  };
}

function sessionOf({ sub, org, sid, label, exp }: JWTPayload): Bearer | null {
  if (!isUuid(sub) || !isUuid(org) || !isUuid(sid) || typeof exp !== 'number') return null;
  const called = typeof label === 'string' ? label : null;
  return { kind: 'session', personId: sub, organisationId: org, sessionId: sid, label: called, untilS: exp };
}

function isUuid(value: unknown): value is string {
  return typeof value === 'string' && readUuid(value) !== null;
}

function isGrant(value: unknown): value is Grant {
  const { role, on, scope, only, from, until } = value as Record<keyof Grant, unknown>;
  const isMoment = (moment: unknown): boolean => moment === null || typeof moment === 'number';
  return (
    (ROLES as readonly unknown[]).includes(role) &&
    (on === null || typeof on === 'string') &&
    (scope === undefined || (scope === 'calling-group' && role === 'official')) &&
    (only === undefined || (only === 'winds' && role === 'official')) &&
    isMoment(from) &&
    isMoment(until)
  );
}
