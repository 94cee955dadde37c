import { randomUUID } from 'node:crypto';
import { notebook, observations, persons, practice, type NewPracticeThrow, type Tx } from '#persistence';
import type { Scene } from './fixture.js';

/** A row in every table of the notebook, a throw corrected among them. */
export async function populateNotebook(tx: Tx, scene: Scene): Promise<void> {
  const { organisationId, athleteId } = scene;
  const [coach, sessionId, throwId] = [randomUUID(), randomUUID(), randomUUID()];
  const fingerprint = '01'.repeat(32);
  const name = { loginName: 'coach.of.throws', displayName: 'Tamsin Orrell', isDemo: false };
  await persons.insert(tx, { organisationId, id: coach, ...name, madeBy: 'administrator' });
  const session = { onDate: '2026-04-14', place: null, note: null, keptBy: coach };
  await practice.insertSession(tx, { organisationId, id: sessionId, ...session });
  const from = { device: null, deviceAt: null, fingerprint };
  const first: NewPracticeThrow = {
    ...{ organisationId, id: throwId, throwId, sessionId, athleteId, event: 'discus' },
    variant: 'standing',
    outcome: 'valid',
    ...{ implementGrams: 750, round: 1, mark: 1840, isMeasured: true, effortPercent: 90 },
    ...{ voidedOnPurpose: false, foul: null, wind: null, styles: [], release: null, isAnnulled: false },
    ...{ replacesId: null, reason: null, loggedBy: coach, ...from },
  };
  await practice.insertThrows(tx, [first]);
  const again = { id: randomUUID(), mark: 1480, replacesId: throwId, reason: 'figures turned round' };
  await practice.insertThrows(tx, [{ ...first, ...again }]);
  await observations.insert(tx, [
    {
      ...{ organisationId, id: randomUUID(), athleteId, event: 'discus', practiceThrowId: throwId },
      ...{ competitionId: null, competitorId: null, round: null, observerId: coach },
      ...{ observedAt: '2026-04-14T16:00:00.000Z', method: 'live', markKnown: false, view: null },
      ...{ checklist: null, checklistVersion: null, scope: ['DT-20'], marks: [], edition: '1', note: null },
      ...{ isWithdrawn: false, replacesId: null, reason: null, ...from },
    },
  ]);
  const body = { kind: 'stage', event: 'discus', stage: 'basics', from: '2026-04-01' } as const;
  const by = { madeBy: coach, fingerprint };
  await notebook.insert(tx, {
    ...{ organisationId, id: randomUUID(), athleteId, kind: 'stage', body, replacesId: null, ...by },
  });
  await notebook.appendChange(tx, {
    ...{ organisationId, sequence: 1, id: randomUUID(), body: { kind: 'hide', code: 'DT-02' }, ...by },
  });
}
