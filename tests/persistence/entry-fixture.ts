import { randomUUID } from 'node:crypto';
import { entryChanges, entryTerms, pastResults, tableImports, type Tx } from '#persistence';
import type { Scene } from './fixture.js';

/** A row in every table of entries and of what came in as a table. */
export async function populateEntries(tx: Tx, scene: Scene): Promise<void> {
  const { organisationId, meetId, competitionId, competitorIds, athleteId, clubId } = scene;
  await entryTerms.insert(tx, {
    ...{ organisationId, meetId, revision: 1, closesAt: '2026-05-01T18:00:00.000Z', setBy: 'director' },
    ...{ mostPerClub: 3, mostPerAthlete: 2, competitionLimits: [{ competitionId, mostPerClub: 1 }] },
  });
  await entryChanges.insert(tx, [
    {
      ...{ organisationId, id: randomUUID(), competitionId, competitorId: competitorIds[0], bib: '101' },
      ...{ kind: 'entered', athleteId, clubId, isLate: true, reason: 'was ill', madeBy: 'director' },
    },
  ]);
  const importId = randomUUID();
  await tableImports.insert(tx, {
    ...{ organisationId, id: importId, holds: 'past results', meetId: null },
    ...{ fingerprint: 'ab'.repeat(32), counts: { lines: 1 }, madeBy: 'director' },
  });
  await pastResults.insert(tx, [
    {
      ...{ organisationId, id: randomUUID(), athleteId, event: 'discus', unit: 'cm', mark: 4410 },
      ...{ wind: null, indoor: false, implementGrams: 1000, onDate: '2019-06-08', place: 2 },
      ...{ meetName: 'Mill Field Evening', source: 'results list of the club', counts: true },
      ...{ replacesId: null, reason: null, importId, importLine: 2, enteredBy: 'director' },
    },
  ]);
}
