import { randomUUID } from 'node:crypto';
import { proceedings, type Tx } from '#persistence';
import type { Scene } from './fixture.js';

/** The result of the scene was posted, protested and decided. */
export async function addProceedings(tx: Tx, { organisationId, competitionId }: Scene): Promise<void> {
  const written = { authority: 'referee', actor: 'referee', device: null, deviceAt: null } as const;
  const [at, id] = ['2026-05-09T13:00:00.000Z', randomUUID()];
  await proceedings.post(tx, {
    ...{ organisationId, id: randomUUID(), competitionId, sequence: 1, postedAt: at },
    ...{ place: null, incomplete: null, ...written },
  });
  await proceedings.lodge(tx, {
    ...{ organisationId, id, competitionId, form: 'oral', ground: 'rules', lodgedBy: 'coach', lodgedAt: at },
    ...{ competitorId: null, attemptId: null, reason: 'called too late', deposit: null, depositPaid: false },
    ...{ timeliness: 'in time', windowUntil: null, ...written },
  });
  await proceedings.addStep(tx, {
    ...{ organisationId, id: randomUUID(), protestId: id, kind: 'decision', outcome: 'dismissed' },
    ...{ doneBy: 'referee', doneAt: at, reason: 'the clock was right', rule: null, deposit: null },
    ...{ timeliness: 'in time', ...written },
  });
}
