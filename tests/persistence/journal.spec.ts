import { randomUUID } from 'node:crypto';
import { setTimeout as delay } from 'node:timers/promises';
import {
  competitions,
  inTransaction,
  journal,
  openDatabase,
  reading,
  violationOf,
  type Appended,
  type Database,
  type NewEntry,
} from '#persistence';
import { migratedDatabase, onConnection, type TestDatabase } from '../support/database.js';
import { attemptOf, makeScene, type Scene } from './fixture.js';

const WRITERS = 16;

describe('the journal', () => {
  let test: TestDatabase;
  let database: Database;
  let scene: Scene;

  beforeAll(async () => {
    test = await migratedDatabase();
    database = await openDatabase({ url: test.url, poolSize: WRITERS });
  });

  afterAll(async () => {
    await database.destroy();
    await test.drop();
  });

  beforeEach(async () => {
    scene = await makeScene(database);
  });

  /** As recording does it: lock, look whether it is there, append. */
  async function record(entry: NewEntry): Promise<Appended | 'there already'> {
    return inTransaction(database, async (tx) => {
      await competitions.lock(tx, entry.organisationId, entry.competitionId);
      if ((await journal.findEntry(tx, entry.organisationId, entry.entryId)) !== null) return 'there already';
      return journal.append(tx, entry);
    });
  }

  async function wholeJournal() {
    return reading(database, (at) => journal.read(at, scene.organisationId, scene.competitionId, 0));
  }

  it('says a trial in a few words by itself, whatever somebody else says', async () => {
    const entry = attemptOf(scene);
    await record(entry);
    const words = await onConnection(test.url, async (client) => {
      await client.query('BEGIN');
      await client.query(`UPDATE competition SET last_sequence = 2, version = version + 1 WHERE id = $1`, [
        scene.competitionId,
      ]);
      const { rows } = await client.query<{ trial: string }>(
        `INSERT INTO journal_entry (organisation_id, competition_id, sequence, entry_id, kind, body, standing, verdict,
                                    authority, actor, fingerprint, trial)
         SELECT organisation_id, competition_id, 2, gen_random_uuid(), kind, body, standing, verdict, authority, actor,
                fingerprint, 'a,somebody else'
           FROM journal_entry WHERE entry_id = $1 RETURNING entry_id || ' ' || trial AS trial`,
        [entry.entryId],
      );
      await client.query('COMMIT');
      return rows[0]!.trial;
    });
    const { competitor, outcome, round, mark } = entry.body as unknown as Record<string, string | number>;
    const [id, trial] = words.split(' ');
    expect(trial).toBe(`a,${id},${competitor},${outcome},${round},${mark},`);
  });

  it('gives back what was put in', async () => {
    const entry = attemptOf(scene);
    const appended = (await record(entry)) as Appended;
    expect(appended).toMatchObject({ sequence: 1, version: 1 });
    const [row] = await wholeJournal();
    expect(row).toEqual({ ...entry, sequence: 1, recordedAt: appended.recordedAt });
    const found = await reading(database, (at) => journal.findEntry(at, scene.organisationId, entry.entryId));
    expect(found).toEqual(row);
  });

  it('counts each entry in the competition, and raises its version', async () => {
    await record(attemptOf(scene));
    await record(attemptOf(scene));
    const competition = await reading(database, (at) =>
      competitions.find(at, scene.organisationId, scene.competitionId),
    );
    expect(competition).toMatchObject({ lastSequence: 2, version: 2 });
  });

  it(`has no gap after ${WRITERS} writers, some of whom change their minds`, async () => {
    const regret = new Error('changed my mind');
    const writer = async (_: unknown, number: number): Promise<void> => {
      for (let turn = 0; turn < 10; turn += 1) {
        if (turn % 3 !== number % 3) {
          await record(attemptOf(scene));
          continue;
        }
        const undone = inTransaction(database, async (tx) => {
          await competitions.lock(tx, scene.organisationId, scene.competitionId);
          await journal.append(tx, attemptOf(scene));
          throw regret;
        });
        await expect(undone).rejects.toBe(regret);
      }
    };
    await Promise.all(Array.from({ length: WRITERS }, writer));
    const rows = await wholeJournal();
    expect(rows.length).toBeGreaterThan(100);
    expect(rows.map(({ sequence }) => sequence)).toEqual(rows.map((_, index) => index + 1));
    const competition = await reading(database, (at) =>
      competitions.find(at, scene.organisationId, scene.competitionId),
    );
    expect(competition?.lastSequence).toBe(rows.length);
  });

  it('has no gap even when writers forget the lock', async () => {
    const entries = Array.from({ length: WRITERS }, () => attemptOf(scene));
    await Promise.all(entries.map((entry) => inTransaction(database, (tx) => journal.append(tx, entry))));
    expect((await wholeJournal()).map(({ sequence }) => sequence)).toEqual(
      entries.map((_, index) => index + 1),
    );
  });

  it('takes an entry once when it is sent many times at once', async () => {
    const entry = attemptOf(scene);
    const answers = await Promise.all(Array.from({ length: WRITERS }, () => record(entry)));
    expect(answers.filter((answer) => answer !== 'there already')).toHaveLength(1);
    expect(await wholeJournal()).toHaveLength(1);
  });

  it('takes an id once though it is sent to two competitions at once', async () => {
    const other = {
      ...(await makeScene(database)),
      organisationId: scene.organisationId,
      competitionId: randomUUID(),
    };
    await inTransaction(database, async (tx) => {
      const own = await competitions.find(tx, scene.organisationId, scene.competitionId);
      const { status: _status, version: _version, lastSequence: _lastSequence, ...setup } = own!;
      await competitions.insert(tx, { ...setup, id: other.competitionId });
    });
    const entryId = randomUUID();
    const answers = await Promise.allSettled([
      record(attemptOf(scene, { entryId })),
      record(attemptOf(other, { entryId })),
    ]);
    const refused = answers.flatMap((answer) =>
      answer.status === 'rejected' ? [violationOf(answer.reason)] : [],
    );
    const late = answers.filter(
      (answer) => answer.status === 'fulfilled' && answer.value === 'there already',
    );
    expect(refused.length + late.length).toBe(1);
    for (const violation of refused)
      expect(violation).toEqual({ kind: 'unique', constraint: 'journal_entry_id_unique' });
  });

  it('makes a second recorder wait until the first is done', async () => {
    const order: string[] = [];
    const locked = signal();
    const release = signal();
    const first = inTransaction(database, async (tx) => {
      await competitions.lock(tx, scene.organisationId, scene.competitionId);
      locked.give();
      await release.given;
      await journal.append(tx, attemptOf(scene));
      order.push('first');
    });
    await locked.given;
    const second = inTransaction(database, async (tx) => {
      const competition = await competitions.lock(tx, scene.organisationId, scene.competitionId);
      order.push('second');
      return competition;
    });
    await untilSomebodyWaits(test.url);
    expect(order).toEqual([]);
    release.give();
    await first;
    // Who waited sees what the other did, not what was there when the waiting began.
    expect(await second).toMatchObject({ lastSequence: 1, version: 1 });
    expect(order).toEqual(['first', 'second']);
  });

  it('keeps recorders of different competitions out of each other’s way', async () => {
    const other = await makeScene(database);
    await inTransaction(database, async (tx) => {
      await competitions.lock(tx, scene.organisationId, scene.competitionId);
      expect(await record(attemptOf(other))).toMatchObject({ sequence: 1 });
    });
  });

  it('is never changed, removed or emptied, not even by the owner of the tables', async () => {
    await record(attemptOf(scene));
    await onConnection(test.url, async (client) => {
      for (const statement of [
        `UPDATE journal_entry SET actor = 'somebody else'`,
        'DELETE FROM journal_entry',
        'DELETE FROM journal_entry WHERE false',
      ]) {
        await expect(client.query(statement)).rejects.toMatchObject({
          constraint: 'journal_entry_insert_only',
        });
      }
      // Other tables name its rows, and are only ever added to themselves: whichever comes first refuses.
      for (const statement of ['TRUNCATE journal_entry CASCADE', 'TRUNCATE competition CASCADE']) {
        await expect(client.query(statement)).rejects.toMatchObject({
          constraint: expect.stringMatching(/_insert_only$/),
        });
      }
    });
    expect(await wholeJournal()).toHaveLength(1);
  });

  it('keeps its competition', async () => {
    await record(attemptOf(scene));
    await onConnection(test.url, async (client) => {
      await client.query('DELETE FROM competitor WHERE competition_id = $1', [scene.competitionId]);
      await expect(
        client.query('DELETE FROM competition WHERE id = $1', [scene.competitionId]),
      ).rejects.toMatchObject({
        constraint: 'journal_entry_competition_fkey',
      });
    });
  });
});

describe('the counters of a competition', () => {
  let test: TestDatabase;
  let database: Database;
  let scene: Scene;

  beforeAll(async () => {
    test = await migratedDatabase();
    database = await openDatabase({ url: test.url });
    scene = await makeScene(database);
    await inTransaction(database, (tx) =>
      competitions.bumpVersion(tx, scene.organisationId, scene.competitionId),
    );
  });

  afterAll(async () => {
    await database.destroy();
    await test.drop();
  });

  it.each([
    ['a version that falls', 'version = version - 1', 'competition_counters_advance'],
    [
      'a journal that leaps',
      'last_sequence = last_sequence + 2, version = version + 9',
      'competition_counters_advance',
    ],
    ['a journal counted down', 'last_sequence = last_sequence - 1', 'competition_counters_advance'],
    [
      'an entry counted at an old version',
      'last_sequence = last_sequence + 1',
      'competition_counters_advance',
    ],
    [
      'an entry counted and not written',
      'last_sequence = last_sequence + 1, version = version + 1',
      'competition_counted_entry_is_there',
    ],
  ])('refuse %s', async (_, change, constraint) => {
    await expect(
      onConnection(test.url, (client) =>
        client.query(`UPDATE competition SET ${change} WHERE id = $1`, [scene.competitionId]),
      ),
    ).rejects.toMatchObject({ constraint });
  });
});

function signal(): { given: Promise<void>; give: () => void } {
  let give: () => void = () => undefined;
  const given = new Promise<void>((resolve) => {
    give = resolve;
  });
  return { given, give };
}

async function untilSomebodyWaits(url: string): Promise<void> {
  await onConnection(url, async (client) => {
    for (;;) {
      const { rowCount } = await client.query(
        `SELECT FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'`,
      );
      if ((rowCount ?? 0) > 0) return;
      await delay(10);
    }
  });
}
