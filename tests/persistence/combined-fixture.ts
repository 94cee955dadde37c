import { createHash, randomUUID } from 'node:crypto';
import {
  combinedEntrants,
  combinedEvents,
  combinedJournal,
  combinedOfficialResults,
  combinedRequests,
  type NewCombinedEntry,
  type NewCombinedEvent,
  type Tx,
} from '#persistence';
import type { Scene } from './fixture.js';

export function heptathlonOf(scene: Scene, changes: Partial<NewCombinedEvent> = {}): NewCombinedEvent {
  return {
    organisationId: scene.organisationId,
    id: randomUUID(),
    meetId: scene.meetId,
    title: 'Heptathlon women',
    programme: 'heptathlon',
    scoredBy: 'W',
    categorySex: 'W',
    categoryAge: null,
    rules: 'WA',
    edition: '2024-01',
    ties: 'stay',
    timing: 'electronic',
    ...changes,
  };
}

/** A time of the hurdles, in the journal of a combined event. */
export function timeOf(
  { organisationId }: Scene,
  combinedEventId: string,
  entrant: string,
): NewCombinedEntry {
  const entryId = randomUUID();
  return {
    ...{ organisationId, combinedEventId, entryId, kind: 'result' },
    body: {
      ...{ kind: 'result', entrant, event: '100mh', outcome: 'valid' },
      ...{ hundredths: 1404, timing: 'electronic', wind: 12 },
    },
    ...{ standing: 'accepted', verdict: { standing: 'accepted', notices: [] } },
    ...{ authority: 'referee', actor: 'referee', device: null, deviceAt: null },
    fingerprint: createHash('sha256').update(entryId).digest('hex'),
  };
}

/** A signed heptathlon with one entrant, a journal of two entries and a linked competition. */
export async function populateCombined(tx: Tx, scene: Scene, highJumpId: string): Promise<void> {
  const { organisationId } = scene;
  const heptathlon = heptathlonOf(scene);
  const entrantId = randomUUID();
  await combinedEvents.insert(tx, heptathlon);
  await combinedEntrants.insert(tx, [
    {
      ...{ organisationId, id: entrantId, combinedEventId: heptathlon.id },
      ...{ athleteId: scene.athleteId, listedName: null, clubId: scene.clubId, listedClub: null },
      ...{ bib: '201', position: 1, guest: false },
    },
  ]);
  await combinedEvents.link(tx, {
    ...{ organisationId, combinedEventId: heptathlon.id, event: 'high-jump' },
    ...{ competitionId: highJumpId, linkedBy: 'director' },
  });
  await combinedEvents.lock(tx, organisationId, heptathlon.id);
  await combinedJournal.append(tx, timeOf(scene, heptathlon.id, entrantId));
  await combinedJournal.append(tx, timeOf(scene, heptathlon.id, entrantId));
  await combinedOfficialResults.archive(tx, {
    ...{ organisationId, combinedEventId: heptathlon.id, sequence: 2 },
    ...{ sheet: {}, result: {}, signedBy: 'referee', confirmedBy: null },
  });
  await combinedRequests.ask(tx, {
    ...{ organisationId, id: randomUUID(), combinedEventId: heptathlon.id, kind: 'reopening', version: 2 },
    ...{ reason: 'a time was misread', authority: 'director', askedBy: 'director' },
  });
}
