import { persons, roles, violationOf } from '#persistence';
import type { Database } from '../platform/database/database.js';
import { issueSetupCode } from '../platform/identity/setup-code.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';

/** What the first administrator signs in with; shown once. */
export interface FirstAdministrator {
  readonly loginName: string;
  readonly code: string;
}

const LOGIN_NAME = 'administrator';

/**
 * Makes the first administrator of an installation that has none, with a one-time code and no password. Null: there is
 * one, or another process that starts at the same moment makes it.
 */
export async function firstAdministrator(
  database: Database,
  organisationId: string,
): Promise<FirstAdministrator | null> {
  try {
    return await database.write(async (tx) => {
      if (await roles.isAdministered(tx, organisationId)) return null;
      const loginName = await freeName(tx, organisationId);
      const [id, madeBy] = [uuidV7(), 'first start'];
      const displayName = 'Administrator';
      await persons.insert(tx, { organisationId, id, loginName, displayName, isDemo: false, madeBy });
      await roles.give(tx, {
        ...{ organisationId, id: uuidV7(), personId: id, role: 'admin', reason: null, givenBy: madeBy },
        ...{ meetId: null, competitionId: null, callingGroupId: null, athleteId: null },
        ...{ startsAt: null, endsAt: null },
      });
      const { code } = await issueSetupCode(tx, organisationId, id);
      return { loginName, code };
    });
  } catch (error) {
    if (violationOf(error)?.constraint === 'person_login_name_unique') return null;
    throw error;
  }
}

/** An earlier administrator's account may have been closed: its name is not given again. */
async function freeName(tx: Parameters<typeof persons.insert>[0], organisationId: string): Promise<string> {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? LOGIN_NAME : `${LOGIN_NAME}-${number}`;
    if (!(await persons.findByLoginName(tx, organisationId, name))) return name;
  }
}
