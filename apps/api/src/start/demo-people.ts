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
  readonly coachedAthleteId: string;
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
  { meetId, runningCompetitionId, coachedAthleteId }: DemoObjects,
): Promise<readonly DemoPerson[]> {
  const wanted: readonly RoleParts[] = [
    { ...NOTHING, role: 'director', meetId },
    { ...NOTHING, role: 'referee', meetId },
    { ...NOTHING, role: 'official', competitionId: runningCompetitionId },
    { ...NOTHING, role: 'coach', athleteId: coachedAthleteId },
  ];
  const passwords = new Passwords();
  return Promise.all(
    wanted.map(async (parts) => {
      const loginName = `demo.${parts.role}`;
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
  parts: RoleParts,
): Promise<string> {
  const there = await persons.findByLoginName(tx, organisationId, loginName);
  if (there?.isDemo === false) throw new Error(`The login name ${loginName} belongs to somebody real.`);
  if (there) return there.id;
  const id = uuidV7();
  const displayName = `Demonstration ${parts.role}`;
  await persons.insert(tx, { organisationId, id, loginName, displayName, isDemo: true, madeBy: 'demo' });
  await roles.give(tx, {
    ...{ organisationId, id: uuidV7(), personId: id, ...parts, callingGroupId: null },
    ...{ startsAt: null, endsAt: null, reason: null, givenBy: 'demo' },
  });
  return id;
}
