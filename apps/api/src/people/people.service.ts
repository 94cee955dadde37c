import { persons, roles, sessions, type Page, type PersonRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import type { PageArgs } from '../platform/connections/connection.js';
import { createOnce } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { AccessMemory } from '../platform/identity/access-memory.js';
import type { Identity } from '../platform/identity/identity.js';
import { issueSetupCode, type SetupCode } from '../platform/identity/setup-code.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { PersonCreateInput } from './people.inputs.js';
import { requireGiver } from './roles.service.js';

export type Refused = { readonly refusal: Refusal };

/** Accounts: who there is, and the one-time codes with which they begin. */
@Injectable()
export class PeopleService {
  constructor(
    private readonly database: Database,
    private readonly access: AccessMemory,
  ) {}

  /** A person without a role, and the code with which to choose a password; no code with a replay. */
  async create(
    input: PersonCreateInput,
    viewer: Identity,
  ): Promise<{ row: PersonRow; code: SetupCode | null; replayed: boolean } | Refused> {
    viewer.requireKeeper();
    const { organisationId } = viewer;
    const wanted = {
      organisationId,
      id: input.id ?? uuidV7(),
      loginName: input.loginName,
      displayName: input.displayName,
      isDemo: false,
      madeBy: viewer.holder!,
    };
    let code: SetupCode | null = null;
    const made = await createOnce<PersonRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => persons.find(tx, organisationId, id),
      insert: async (tx) => {
        if (await persons.findByLoginName(tx, organisationId, wanted.loginName)) return NAME_TAKEN;
        await persons.insert(tx, wanted);
        code = await issueSetupCode(tx, organisationId, wanted.id);
        return null;
      },
    });
    return 'refusal' in made ? made : { ...made, code: made.replayed ? null : code };
  }

  /**
   * Another code for somebody who lost the password; the password stays until the code is used. A director does it for
   * those who have no role beyond the own meets: whoever sets a password can be that person.
   */
  async issueCode(personId: string, viewer: Identity): Promise<{ readonly code: SetupCode } | Refused> {
    viewer.requireKeeper();
    const { organisationId } = viewer;
    return this.database.write(async (tx) => {
      const person = await persons.lock(tx, organisationId, personId);
      if (!person || person.closedAt !== null) return { refusal: notFound('person', ['personId']) };
      const held = await roles.ofPersons(tx, organisationId, [personId]);
      for (const grant of held.filter(({ revokedAt }) => revokedAt === null)) {
        await requireGiver(tx, grant, viewer);
      }
      return { code: await issueSetupCode(tx, organisationId, personId) };
    });
  }

  /** Nobody signs in with the account any more, and whoever is signed in is out. */
  async close(personId: string, viewer: Identity): Promise<{ readonly row: PersonRow } | Refused> {
    viewer.requireAdmin();
    const { organisationId } = viewer;
    const row = await this.database.write(async (tx) => {
      if (!(await persons.lock(tx, organisationId, personId))) return null;
      await persons.close(tx, organisationId, personId, viewer.holder!);
      await persons.setCredential(tx, { organisationId, personId, ...NOTHING });
      await sessions.endAll(tx, organisationId, personId, 'closed');
      return persons.find(tx, organisationId, personId);
    });
    if (!row) return { refusal: notFound('person', ['personId']) };
    await this.access.changed(organisationId, personId);
    return { row };
  }

  async page({ first, after }: PageArgs, viewer: Identity): Promise<Page<PersonRow>> {
    viewer.requireKeeper();
    return this.database.read((at) => persons.page(at, viewer.organisationId, { first, after }));
  }

  /** Oneself, or anybody for those who give roles; null: there is no such person, or not for the viewer. */
  async find(personId: string, viewer: Identity): Promise<PersonRow | null> {
    if (viewer.account?.personId !== personId && !viewer.mayKeepAthletes) return null;
    return this.database.read((at) => persons.find(at, viewer.organisationId, personId));
  }
}

const NOTHING = { passwordHash: null, setupHash: null, setupExpiresAt: null };

const NAME_TAKEN = refusal({
  code: 'NAME_TAKEN',
  path: ['loginName'],
  message: 'Somebody else has this login name.',
  remedy: 'Choose another one.',
});
