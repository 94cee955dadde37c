import {
  persons,
  roles,
  violationOf,
  type MeetRow,
  type PersonRow,
  type Reads,
  type RoleRow,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { AccessMemory } from '../platform/identity/access-memory.js';
import {
  findRoleObject,
  isRefused,
  windowGiven,
  type RoleObject,
  type Window,
} from '../platform/identity/giving.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { RoleGrantInput, RoleRevokeInput } from './roles.inputs.js';

type Revoked = { readonly row: RoleRow } | { readonly refusal: Refusal };

/** Gives roles and takes them away. What was given and taken stays on record; both hold at once. */
@Injectable()
export class RolesService {
  constructor(
    private readonly database: Database,
    private readonly access: AccessMemory,
  ) {}

  /** An administrator gives anything, a director the posts of the own meet. Throws FORBIDDEN for anything else. */
  async give(input: RoleGrantInput, viewer: Identity): Promise<Created<RoleRow>> {
    const { organisationId } = viewer;
    const { role } = input;
    const object = await this.database.read((at) =>
      findRoleObject(at, organisationId, role, input.on ?? null),
    );
    if (!object) return { refusal: NO_SUCH_OBJECT };
    const window = this.windowFor(object, input, viewer);
    if (isRefused(window)) return window;
    const { ofMeet: _, ...on } = object;
    const wanted = {
      ...{ organisationId, id: input.id ?? uuidV7(), personId: input.personId, role, ...on },
      startsAt: input.from?.toISOString() ?? null,
      endsAt: window.until === null ? null : new Date(window.until * 1000).toISOString(),
      reason: input.reason ?? null,
      givenBy: viewer.holder!,
    };
    const given = await createOnce<RoleRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => roles.find(tx, organisationId, id),
      insert: async (tx) => {
        const person = await persons.find(tx, organisationId, input.personId);
        if (!person || person.closedAt !== null) return notFound('person', ['personId']);
        await roles.give(tx, wanted);
        return null;
      },
    });
    if ('row' in given && !given.replayed) await this.access.changed(organisationId, input.personId);
    return given;
  }

  private windowFor(
    { ofMeet }: RoleObject,
    { from, until }: RoleGrantInput,
    viewer: Identity,
  ): Window | { readonly refusal: Refusal } {
    const wanted = {
      from: Math.floor((from?.getTime() ?? Date.now()) / 1000),
      until: until ? Math.floor(until.getTime() / 1000) : null,
    };
    // What is of no meet is an athlete's, or everybody's.
    if (ofMeet === null) viewer.requireAdmin();
    return windowGiven(viewer, ['director'], ofMeet ?? '', wanted);
  }

  /** Takes a role away: it does not hold from now on, in open connections neither. */
  async revoke({ grantId, reason }: RoleRevokeInput, viewer: Identity): Promise<Revoked> {
    const { organisationId } = viewer;
    const done = await this.database
      .write<Revoked>(async (tx) => {
        const grant = await roles.find(tx, organisationId, grantId);
        if (!grant) return { refusal: notFound('grant', ['grantId']) };
        await requireGiver(tx, grant, viewer);
        if (grant.revokedAt !== null) return { refusal: ALREADY_SO };
        await roles.revoke(tx, { organisationId, grantId, reason, revokedBy: viewer.holder! });
        return { row: (await roles.find(tx, organisationId, grantId))! };
      })
      .catch((error: unknown): Revoked => {
        if (violationOf(error)?.constraint === 'role_revocation_pkey') return { refusal: ALREADY_SO };
        throw error;
      });
    if ('row' in done) await this.access.changed(organisationId, done.row.personId);
    return done;
  }

  /** For each of these persons everything they were ever given. One statement. */
  async ofPersons(of: readonly PersonRow[]): Promise<RoleRow[][]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = of.map(({ id }) => id);
    const rows = await this.database.read((at) => roles.ofPersons(at, organisationId, ids));
    return of.map(({ id }) => rows.filter(({ personId }) => personId === id));
  }

  /** For each of these grants its person. One statement. */
  async personsOf(of: readonly RoleRow[]): Promise<PersonRow[]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = [...new Set(of.map(({ personId }) => personId))];
    const rows = await this.database.read((at) => persons.byIds(at, organisationId, ids));
    return of.map(({ personId }) => {
      const person = rows.find(({ id }) => id === personId);
      if (!person) throw new Error('A grant names a person who is not there.');
      return person;
    });
  }

  /** Everything that was ever given at a meet; throws FORBIDDEN unless the viewer directs it. */
  async ofMeet(meet: MeetRow, viewer: Identity): Promise<RoleRow[]> {
    viewer.requireDirector(meet.id);
    return this.database.read((at) => roles.ofMeet(at, meet.organisationId, meet.id));
  }
}

/** Throws UNAUTHENTICATED or FORBIDDEN unless the viewer could have given this. */
export async function requireGiver(at: Reads, grant: RoleRow, viewer: Identity): Promise<void> {
  if (viewer.isAdmin) return;
  const { role, meetId, competitionId, callingGroupId, athleteId } = grant;
  const on = meetId ?? competitionId ?? callingGroupId ?? athleteId;
  const object = await findRoleObject(at, grant.organisationId, role, on);
  if (!object || object.ofMeet === null) return viewer.requireAdmin();
  viewer.requireDirector(object.ofMeet);
}

const NO_SUCH_OBJECT = refusal({
  code: 'NOT_FOUND',
  path: ['on'],
  message: 'There is nothing of that id that this role is for.',
  remedy:
    'Send a meet for a director or referee, a competition or calling group for an official, an athlete for a coach, athlete or guardian, and nothing for an administrator.',
});

const ALREADY_SO = refusal({
  code: 'ALREADY_SO',
  path: ['grantId'],
  message: 'The role was taken away before.',
  remedy: 'Nothing needs to be done.',
});
