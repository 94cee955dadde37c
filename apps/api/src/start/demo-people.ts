import { persons, roles, type RoleGrantRow, type Tx } from '#persistence';
import type { Database } from '../platform/database/database.js';
import { makeCode, Passwords } from '../platform/identity/passwords.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';

/** Somebody of the demonstration, who can sign in until the program is started again. */
export interface DemoPerson {
  readonly loginName: string;
  readonly password: string;
}

/** For whom and what there are roles; UUIDs. */
export interface DemoObjects {
  readonly meetId: string;
  readonly runningCompetitionId: string;
  readonly coachedAthleteIds: readonly string[];
}

type RoleParts = Pick<RoleGrantRow, 'role' | 'meetId' | 'competitionId' | 'athleteId'>;

const NOTHING = { meetId: null, competitionId: null, athleteId: null };

/**
 * The people of the demonstration, each with a password that is drawn at every start: there is none to be known from
 * elsewhere. Where no demonstration runs, the doorkeeper knows them not.
 */
export async function demoPeople(
  database: Database,
  organisationId: string,
  { meetId, runningCompetitionId, coachedAthleteIds }: DemoObjects,
): Promise<readonly DemoPerson[]> {
  const coached = coachedAthleteIds.map((athleteId) => ({ ...NOTHING, role: 'coach' as const, athleteId }));
  const wanted: readonly (readonly [RoleParts, ...RoleParts[]])[] = [
    [{ ...NOTHING, role: 'director', meetId }],
    [{ ...NOTHING, role: 'referee', meetId }],
    [{ ...NOTHING, role: 'official', competitionId: runningCompetitionId }],
    coached as [RoleParts, ...RoleParts[]],
  ];
  const passwords = new Passwords();
  return Promise.all(
    wanted.map(async (parts) => {
      const loginName = `demo.${parts[0].role}`;
      const password = makeCode().slice(0, 17).toLowerCase();
      const passwordHash = await passwords.hash(password);
      await database.write(async (tx) => {
        const personId = await personIn(tx, organisationId, loginName, parts);
        const chosen = { passwordHash, setupHash: null, setupExpiresAt: null };
        await persons.setCredential(tx, { organisationId, personId, ...chosen });
      });
      return { loginName, password };
    }),
  );
}

async function personIn(
  tx: Tx,
  organisationId: string,
  loginName: string,
  parts: readonly [RoleParts, ...RoleParts[]],
): Promise<string> {
  const there = await persons.findByLoginName(tx, organisationId, loginName);
  if (there?.isDemo === false) throw new Error(`The login name ${loginName} belongs to somebody real.`);
  const id = there?.id ?? uuidV7();
  if (!there) {
    const displayName = `Demonstration ${parts[0].role}`;
    await persons.insert(tx, { organisationId, id, loginName, displayName, isDemo: true, madeBy: 'demo' });
  }
  const held = await roles.ofPersons(tx, organisationId, [id]);
  for (const part of parts) {
    if (held.some((one) => one.revokedAt === null && one.athleteId === part.athleteId)) continue;
    await roles.give(tx, {
      ...{ organisationId, id: uuidV7(), personId: id, ...part, callingGroupId: null },
      ...{ startsAt: null, endsAt: null, reason: null, givenBy: 'demo' },
    });
  }
  return id;
}
