import { crews, timetables, type Tx } from '#persistence';
import type { Scene } from './fixture.js';

/** When and where the competition of a scene takes place, and who works at it. */
export async function addPlan(tx: Tx, { organisationId, meetId, competitionId }: Scene): Promise<void> {
  const slot = {
    ...{ competitions: [competitionId], facility: 'cage' },
    ...{ startsAt: 0, minutes: 60, reportMinutes: 30 },
  };
  await timetables.insert(tx, {
    ...{ organisationId, meetId, revision: 1, reason: null, setBy: 'director' },
    ...{ facilities: [{ key: 'cage', name: 'Cage' }], sharedGrounds: [], slots: [slot] },
  });
  const members = [{ post: 'recorder', name: 'Ilse Tannhauer' }] as const;
  await crews.insert(tx, { organisationId, competitionId, revision: 1, members, setBy: 'director' });
}
