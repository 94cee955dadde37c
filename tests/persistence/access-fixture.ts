import { randomUUID } from 'node:crypto';
import { decisions, deviceLinks, persons, roles, sessions, type Tx } from '#persistence';
import type { Scene } from './fixture.js';
import { populateNotebook } from './notebook-fixture.js';

/** A person with everything that hangs on one, rows of links and second persons, and what a coach keeps. */
export async function populateAccess(tx: Tx, scene: Scene): Promise<void> {
  const { organisationId, meetId, competitionId } = scene;
  const [personId, grantId, sessionId, linkId, requestId] = Array.from({ length: 5 }, () => randomUUID());
  const noObject = { meetId: null, competitionId: null, callingGroupId: null, athleteId: null };
  const window = { startsAt: '2026-05-09T06:00:00.000Z', endsAt: '2026-05-09T20:00:00.000Z' };
  const name = { loginName: 'orla.fennick', displayName: 'Orla Fennick', isDemo: false };
  await persons.insert(tx, { organisationId, id: personId!, ...name, madeBy: 'administrator' });
  const code = { setupHash: 'ab'.repeat(32), setupExpiresAt: '2026-05-10T06:00:00.000Z' };
  await persons.setCredential(tx, { organisationId, personId: personId!, passwordHash: null, ...code });
  await roles.give(tx, {
    ...{ organisationId, id: grantId!, personId: personId!, role: 'referee', ...noObject, meetId },
    ...{ ...window, reason: null, givenBy: 'director' },
  });
  await roles.revoke(tx, { organisationId, grantId: grantId!, reason: 'went home', revokedBy: 'director' });
  await sessions.insert(tx, { organisationId, id: sessionId!, personId: personId!, label: 'laptop' });
  await sessions.addRefreshToken(tx, {
    ...{ organisationId, hash: 'cd'.repeat(32), sessionId: sessionId!, generation: 1 },
    expiresAt: '2026-06-09T06:00:00.000Z',
  });
  await sessions.revokeToken(tx, { organisationId, tokenId: randomUUID(), reason: 'lost', revokedBy: 'x' });
  const link = {
    ...{ organisationId, id: linkId!, meetId, competitionId, callingGroupId: null, label: 'Circle 2' },
    isWindsOnly: false,
    ...{ ...window, devices: 2, madeBy: 'referee' },
  };
  await deviceLinks.insert(tx, link);
  await deviceLinks.use(tx, { ...link, madeAt: '' }, randomUUID());
  await deviceLinks.revoke(tx, { organisationId, linkId: linkId!, reason: 'lost', revokedBy: 'referee' });
  await decisions.ask(tx, {
    ...{ organisationId, id: requestId!, competitionId, kind: 'sign-off', reason: null, version: 2 },
    ...{ authority: 'official', askedBy: 'chief judge' },
  });
  await decisions.confirm(tx, {
    ...{ organisationId, requestId: requestId!, askedBy: 'chief judge', entryId: randomUUID() },
    ...{ authority: 'referee', confirmedBy: 'referee of throws' },
  });
  await populateNotebook(tx, scene);
}
