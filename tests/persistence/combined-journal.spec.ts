import { randomUUID } from 'node:crypto';
import {
  combinedEntrants,
  combinedEvents,
  combinedJournal,
  combinedOfficialResults,
  competitions,
  inTransaction,
  openDatabase,
  reading,
  type Database,
} from '#persistence';
import { migratedDatabase, onConnection, type TestDatabase } from '../support/database.js';
import { heptathlonOf, timeOf } from './combined-fixture.js';
import { highJumpOf, makeScene, type Scene } from './fixture.js';

describe('the journal of a combined event', () => {
  let test: TestDatabase;
  let database: Database;
  let scene: Scene;
  let id: string;
  const entrant = randomUUID();

  beforeAll(async () => {
    test = await migratedDatabase();
    database = await openDatabase({ url: test.url });
  });
  afterAll(async () => {
    await database.destroy();
    await test.drop();
  });
  beforeEach(async () => {
    scene = await makeScene(database);
    const heptathlon = heptathlonOf(scene);
    id = heptathlon.id;
    await inTransaction(database, (tx) => combinedEvents.insert(tx, heptathlon));
  });

  const record = (): Promise<{ sequence: number; version: number }> =>
    inTransaction(database, async (tx) => {
      await combinedEvents.lock(tx, scene.organisationId, id);
      return combinedJournal.append(tx, timeOf(scene, id, entrant));
    });

  it('is counted without gaps, also by several at once', async () => {
    const appended = await Promise.all(Array.from({ length: 8 }, record));
    expect(appended.map(({ sequence }) => sequence).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    const rows = await reading(database, (at) => combinedJournal.readAll(at, scene.organisationId, [id]));
    expect(rows.map(({ sequence }) => sequence)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    const found = await reading(database, (at) =>
      combinedJournal.findEntry(at, scene.organisationId, rows[2]!.entryId),
    );
    expect(found).toEqual(rows[2]);
  });

  it('is never changed, removed or emptied, nor are links and signed results, not even by their owner', async () => {
    await record();
    await inTransaction(database, async (tx) => {
      const { organisationId, competitionId } = scene;
      const link = { organisationId, combinedEventId: id, event: 'shot', competitionId } as const;
      await combinedEvents.link(tx, { ...link, linkedBy: 'director' });
      const signed = { organisationId, combinedEventId: id, sequence: 1, sheet: null, result: {} };
      await combinedOfficialResults.archive(tx, { ...signed, signedBy: 'referee', confirmedBy: null });
    });
    await onConnection(test.url, async (client) => {
      for (const [table, change] of [
        ['combined_entry', `actor = 'somebody else'`],
        ['combined_link', `linked_by = 'somebody else'`],
        ['combined_official_result', `signed_by = 'somebody else'`],
      ]) {
        for (const statement of [
          `UPDATE ${table} SET ${change}`,
          `DELETE FROM ${table}`,
          `TRUNCATE ${table}`,
        ]) {
          const constraint = `${table}_insert_only`;
          await expect(client.query(statement)).rejects.toMatchObject({ constraint });
        }
      }
    });
  });

  it('keeps what was counted from not being written, and a version from falling', async () => {
    await record();
    await onConnection(test.url, async (client) => {
      const change = (what: string): Promise<unknown> =>
        client.query(`UPDATE combined_event SET ${what} WHERE id = $1`, [id]);
      await expect(change('last_sequence = last_sequence + 1, version = version + 1')).rejects.toMatchObject({
        constraint: 'combined_event_counted_entry_is_there',
      });
      for (const what of [
        'version = version - 1',
        'last_sequence = last_sequence + 2, version = version + 2',
      ]) {
        await expect(change(what)).rejects.toMatchObject({ constraint: 'combined_event_counters_advance' });
      }
    });
  });

  it('does not name an entry of that id twice', async () => {
    const entry = timeOf(scene, id, entrant);
    const append = (): Promise<unknown> => inTransaction(database, (tx) => combinedJournal.append(tx, entry));
    await append();
    await expect(append()).rejects.toMatchObject({ constraint: 'combined_entry_id_unique' });
  });

  it('goes by the newest link of each event, until one ends it', async () => {
    const { organisationId } = scene;
    const highJump = highJumpOf(scene);
    const link = (competitionId: string | null): Promise<void> =>
      inTransaction(database, async (tx) => {
        const row = { organisationId, combinedEventId: id, event: 'high-jump' as const };
        await combinedEvents.link(tx, { ...row, competitionId, linkedBy: 'director' });
      });
    const links = (): Promise<unknown[]> =>
      reading(database, (at) => combinedEvents.linksOf(at, organisationId, [id]));
    await inTransaction(database, (tx) => competitions.insert(tx, highJump));
    await link(highJump.id);
    expect(await links()).toEqual([{ combinedEventId: id, event: 'high-jump', competitionId: highJump.id }]);
    await link(null);
    expect(await links()).toEqual([]);
  });

  it('has entrants in their order, who leave again', async () => {
    const { organisationId } = scene;
    const line = (bib: string, position: number) => ({
      ...{ organisationId, id: randomUUID(), combinedEventId: id, athleteId: null, clubId: null },
      ...{ listedName: `Mira Tolve ${bib}`, listedClub: null, bib, position, guest: false },
    });
    const [first, second] = [line('7', 2), line('8', 1)];
    await inTransaction(database, (tx) => combinedEntrants.insert(tx, [first, second]));
    const list = (): Promise<unknown[]> =>
      reading(database, (at) => combinedEntrants.ofEvents(at, organisationId, [id]));
    expect(await list()).toEqual([second, first]);
    expect(await inTransaction(database, (tx) => combinedEntrants.remove(tx, organisationId, first.id))).toBe(
      true,
    );
    expect(await list()).toEqual([second]);
  });
});
