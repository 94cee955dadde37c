import { randomUUID } from 'node:crypto';
import { competitions, draws, qualifications, type NewCompetition, type Tx } from '#persistence';
import type { Scene } from './fixture.js';

/** The list drawn as the final of a qualification in one group, and moved by hand afterwards. */
export async function drawOnce(tx: Tx, scene: Scene, group: NewCompetition): Promise<void> {
  const { organisationId, competitionId, meetId } = scene;
  const [qualificationId, drawId] = [randomUUID(), randomUUID()];
  await competitions.insert(tx, group);
  await qualifications.insert(tx, {
    ...{ organisationId, id: qualificationId, meetId, title: 'Discus women' },
    ...{ finalId: competitionId, groupIds: [group.id] },
  });
  await draws.add(tx, {
    ...{ organisationId, id: drawId, competitionId, qualificationId, procedure: 'shuffle/1' },
    ...{ seed: 'Spring throws', method: 'lot', clubmatesApart: false, reason: null, drawnBy: 'director' },
    entries: ['101', '102'].map((key) => ({ key, seedMark: null, club: null })),
    flights: [{ label: null, bibs: ['102', '101'] }],
  });
  const lines = [{ bib: '101', flight: null }];
  await draws.amend(tx, { organisationId, drawId, kind: 'set by hand', lines, madeBy: 'director' });
}
