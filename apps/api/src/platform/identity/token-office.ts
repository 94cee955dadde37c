import { sessions, violationOf } from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../database/database.js';
import { refusal, type Refusal } from '../errors/user-error.types.js';
import { uuidV7 } from '../inputs/uuid-v7.js';
import { AccessMemory } from './access-memory.js';
import { findRoleObject, windowGiven, type RoleObject } from './giving.js';
import { POSTS, type Grant } from './grant.js';
import type { TokenIssueInput, TokenRevokeInput } from './identity.inputs.js';
import type { Identity } from './identity.js';
import { Tokens } from './tokens.js';

const DAY_S = 24 * 60 * 60;

export type Issued =
  | { readonly token: string; readonly tokenId: string; readonly grant: Grant }
  | { readonly refusal: Refusal };

/** Makes tokens for others: an administrator for anything, a director for the posts of the own meet. */
@Injectable()
export class TokenOffice {
  constructor(
    private readonly database: Database,
    private readonly tokens: Tokens,
    private readonly access: AccessMemory,
  ) {}

  async issue(input: TokenIssueInput, viewer: Identity): Promise<Issued> {
    const { role, label } = input;
    const on = input.on ?? null;
    if (!(POSTS as readonly unknown[]).includes(role)) return { refusal: NEEDS_PERSON };
    if (role === 'admin') viewer.requireAdmin();
    const object = await this.objectOf(input, viewer);
    if (!object) return { refusal: noObjectOf(role) };
    const window = windowOf(input, object, viewer);
    if ('refusal' in window) return window;
    const grant: Grant = {
      ...{ role, on },
      ...(object.callingGroupId !== null && { scope: 'calling-group' }),
      ...window,
    };
    const tokenId = uuidV7();
    const { organisationId } = viewer;
    const token = await this.tokens.issue({ holder: tokenId, organisationId, grants: [grant], label });
    return { token, tokenId, grant };
  }

  /** Ends a token, at once; null: done. */
  async revoke({ tokenId, reason }: TokenRevokeInput, viewer: Identity): Promise<Refusal | null> {
    viewer.requireAdmin();
    const { organisationId } = viewer;
    try {
      const row = { organisationId, tokenId, reason, revokedBy: viewer.holder! };
      await this.database.write((tx) => sessions.revokeToken(tx, row));
    } catch (error) {
      if (violationOf(error)?.constraint === 'token_revocation_pkey') return ALREADY_SO;
      throw error;
    }
    this.access.revoke(tokenId);
    return null;
  }

  /** The object of the post; null: there is none of the kind. */
  private objectOf({ role, on }: TokenIssueInput, { organisationId }: Identity): Promise<RoleObject | null> {
    return this.database.read((at) => findRoleObject(at, organisationId, role, on ?? null));
  }
}

/** A post's token ends: after 30 days for an official, a year for others, and not after the right of who makes it. */
function windowOf(
  { role, from, until }: TokenIssueInput,
  { ofMeet }: RoleObject,
  viewer: Identity,
): { readonly from: number; readonly until: number } | { readonly refusal: Refusal } {
  const start = Math.floor((from?.getTime() ?? Date.now()) / 1000);
  const wanted = { from: start, until: until ? Math.floor(until.getTime() / 1000) : null };
  const window = windowGiven(viewer, ['director'], ofMeet ?? '', wanted);
  if ('refusal' in window) return window;
  const usual = start + (role === 'official' ? 30 : 365) * DAY_S;
  if (wanted.until !== null) return { from: start, until: wanted.until };
  return { from: start, until: Math.min(usual, window.until ?? usual) };
}

function noObjectOf(role: Grant['role']): Refusal {
  if (role === 'admin') {
    return refusal({
      code: 'NOT_FOUND',
      path: ['on'],
      message: 'An administrator is not for one object.',
      remedy: 'Leave it out.',
    });
  }
  const [what, remedy] =
    role === 'official'
      ? ['competition or calling group', 'a competition or of a calling group']
      : ['meet', 'a meet'];
  return refusal({
    code: 'NOT_FOUND',
    path: ['on'],
    message: `There is no such ${what}.`,
    remedy: `Send the id of ${remedy}.`,
  });
}

const NEEDS_PERSON = refusal({
  code: 'NEEDS_PERSON',
  path: ['role'],
  message: 'Coaches, athletes and guardians are people with an account.',
  remedy: 'Make an account with personCreate and give the role with roleGrant.',
});

const ALREADY_SO = refusal({
  code: 'ALREADY_SO',
  path: ['tokenId'],
  message: 'The token was revoked before.',
  remedy: 'Nothing needs to be done.',
});
