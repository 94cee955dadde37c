import { competitions, meets } from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../database/database.js';
import { refusal, type Refusal } from '../errors/user-error.types.js';
import { uuidV7 } from '../inputs/uuid-v7.js';
import type { Grant } from './grant.js';
import type { TokenIssueInput } from './identity.inputs.js';
import type { Identity } from './identity.js';
import { Tokens } from './tokens.js';

const DAY_S = 24 * 60 * 60;

export type Issued = { readonly token: string; readonly grant: Grant } | { readonly refusal: Refusal };

/** Makes tokens for others: an administrator for anything, a director for the posts of the own meet. */
@Injectable()
export class TokenOffice {
  constructor(
    private readonly database: Database,
    private readonly tokens: Tokens,
  ) {}

  async issue(input: TokenIssueInput, viewer: Identity): Promise<Issued> {
    const target = await this.targetOf(input, viewer);
    if ('refusal' in target) return target;
    const grant = { role: input.role, on: target.on, ...windowOf(input) };
    if (grant.until <= grant.from) {
      return {
        refusal: refusal({
          code: 'WINDOW_EMPTY',
          path: ['until'],
          message: 'The token would end before it begins.',
          remedy: 'Send a later end.',
        }),
      };
    }
    const token = await this.tokens.issue({
      holder: uuidV7(),
      organisationId: viewer.organisationId,
      grants: [grant],
      label: input.label,
    });
    return { token, grant };
  }

  /** What the role is for, after checking that the viewer may give it away. */
  private async targetOf(
    { role, on }: TokenIssueInput,
    viewer: Identity,
  ): Promise<{ readonly on: string | null } | { readonly refusal: Refusal }> {
    if (role === 'admin') {
      viewer.requireAdmin();
      return { on: null };
    }
    const meetId = on ? await this.meetOf(role === 'official' ? 'competition' : 'meet', on, viewer) : null;
    if (!on || meetId === null) {
      const what = role === 'official' ? 'competition' : 'meet';
      return {
        refusal: refusal({
          code: 'NOT_FOUND',
          path: ['on'],
          message: `There is no such ${what}.`,
          remedy: `Send the id of a ${what}.`,
        }),
      };
    }
    viewer.requireDirector(meetId);
    return { on };
  }

  private meetOf(
    kind: 'meet' | 'competition',
    id: string,
    { organisationId }: Identity,
  ): Promise<string | null> {
    return this.database.read(async (at) => {
      if (kind === 'meet') return (await meets.find(at, organisationId, id))?.id ?? null;
      return (await competitions.find(at, organisationId, id))?.meetId ?? null;
    });
  }
}

function windowOf({ role, from, until }: TokenIssueInput): { readonly from: number; readonly until: number } {
  const start = from ? Math.floor(from.getTime() / 1000) : Math.floor(Date.now() / 1000);
  const days = role === 'official' ? 30 : 365;
  return { from: start, until: until ? Math.floor(until.getTime() / 1000) : start + days * DAY_S };
}
