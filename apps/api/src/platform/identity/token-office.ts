import { callingGroups, competitions, meets } from '#persistence';
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
    const grant = { role: input.role, ...target, ...windowOf(input) };
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
  ): Promise<Pick<Grant, 'on' | 'scope'> | { readonly refusal: Refusal }> {
    if (role === 'admin') {
      viewer.requireAdmin();
      return { on: null };
    }
    const target = on ? await this.find(role, on, viewer) : null;
    if (!on || target === null) {
      const [what, remedy] =
        role === 'official'
          ? ['competition or calling group', 'a competition or of a calling group']
          : ['meet', 'a meet'];
      return {
        refusal: refusal({
          code: 'NOT_FOUND',
          path: ['on'],
          message: `There is no such ${what}.`,
          remedy: `Send the id of ${remedy}.`,
        }),
      };
    }
    viewer.requireDirector(target.meetId);
    return target.scope === undefined ? { on } : { on, scope: target.scope };
  }

  private find(
    role: Grant['role'],
    id: string,
    { organisationId }: Identity,
  ): Promise<{ readonly meetId: string; readonly scope?: Grant['scope'] } | null> {
    return this.database.read(async (at) => {
      if (role !== 'official') {
        const meet = await meets.find(at, organisationId, id);
        return meet && { meetId: meet.id };
      }
      const competition = await competitions.find(at, organisationId, id);
      if (competition) return { meetId: competition.meetId };
      const group = await callingGroups.find(at, organisationId, id);
      return group && { meetId: group.meetId, scope: 'calling-group' };
    });
  }
}

function windowOf({ role, from, until }: TokenIssueInput): { readonly from: number; readonly until: number } {
  const start = from ? Math.floor(from.getTime() / 1000) : Math.floor(Date.now() / 1000);
  const days = role === 'official' ? 30 : 365;
  return { from: start, until: until ? Math.floor(until.getTime() / 1000) : start + days * DAY_S };
}
