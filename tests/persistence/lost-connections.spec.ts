import { once } from 'node:events';
import { createServer, type AddressInfo } from 'node:net';
import { setTimeout as delay } from 'node:timers/promises';
import {
  competitions,
  inTransaction,
  openDatabase,
  organisations,
  reading,
  sqlStateOf,
  type Database,
} from '#persistence';
import { migratedDatabase, onConnection, type TestDatabase } from '../support/database.js';
import { makeScene, type Scene } from './fixture.js';

describe('a connection that is lost', () => {
  let test: TestDatabase;
  let database: Database;
  let scene: Scene;
  const lost: unknown[] = [];

  beforeAll(async () => {
    test = await migratedDatabase();
    database = await openDatabase({
      url: test.url,
      poolSize: 2,
      connectionTimeoutMs: 2_000,
      statementTimeoutMs: 300,
      idleInTransactionTimeoutMs: 300,
      onConnectionLost: (error) => lost.push(error),
    });
    scene = await makeScene(database);
  });

  afterAll(async () => {
    await database.destroy();
    await test.drop();
  });

  async function endAllConnections(): Promise<void> {
    await onConnection(test.url, (client) =>
      client.query(
        `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
          WHERE datname = current_database() AND application_name = 'sectorline'`,
      ),
    );
  }

  async function expectToWork(): Promise<void> {
    expect(await reading(database, (at) => organisations.find(at, scene.organisationId))).not.toBeNull();
  }

  it('while nobody uses it, is replaced and reported', async () => {
    await expectToWork();
    await endAllConnections();
    while (lost.length === 0) await delay(10);
    await expectToWork();
    expect(sqlStateOf(lost[0])).toBe('57P01');
  });

  it('in the middle of a transaction fails that transaction alone, and nothing of it stays', async () => {
    const cut = inTransaction(database, async (tx) => {
      await competitions.bumpVersion(tx, scene.organisationId, scene.competitionId);
      await endAllConnections();
      await delay(50);
      await competitions.bumpVersion(tx, scene.organisationId, scene.competitionId);
    });
    await expect(cut).rejects.toMatchObject({ name: 'ConnectionLost', code: '08006' });
    await expectToWork();
    expect(
      await reading(database, (at) => competitions.versionOf(at, scene.organisationId, scene.competitionId)),
    ).toBe(0);
  });

  it('because its owner forgot the transaction, gives the lock back', async () => {
    const patient = await openDatabase({ url: test.url, statementTimeoutMs: 0 });
    const failures: unknown[] = [];
    let remember: () => void = () => undefined;
    const remembered = new Promise<void>((resolve) => (remember = resolve));
    const locked = new Promise<void>((resolve) => {
      const forgotten = inTransaction(database, async (tx) => {
        await competitions.lock(tx, scene.organisationId, scene.competitionId);
        resolve();
        await remembered;
      });
      forgotten.then(
        () => undefined,
        (error: unknown) => failures.push(error),
      );
    });
    await locked;
    // Waits as long as the lock is held.
    await inTransaction(patient, (tx) => competitions.lock(tx, scene.organisationId, scene.competitionId));
    await patient.destroy();
    remember();
    while (failures.length === 0) await delay(10);
    await expectToWork();
  });

  it('is not waited for when a statement takes too long', async () => {
    const slow = database.query('SELECT pg_sleep(30)');
    await expect(slow).rejects.toMatchObject({ code: '57014' });
    await expectToWork();
  });

  it('is not waited for when all are in use', async () => {
    const small = await openDatabase({ url: test.url, poolSize: 1, connectionTimeoutMs: 200 });
    await inTransaction(small, async () => {
      const another = reading(small, (at) => organisations.find(at, scene.organisationId));
      await expect(another).rejects.toThrow(/timeout/i);
    });
    await small.destroy();
  });

  it('was never made where nobody answers', async () => {
    const silent = createServer((socket) => socket.unref()).listen(0, '127.0.0.1');
    await once(silent, 'listening');
    const { port } = silent.address() as AddressInfo;
    const opening = openDatabase({
      url: `postgres://nobody@127.0.0.1:${port}/none`,
      connectionTimeoutMs: 200,
    });
    await expect(opening).rejects.toThrow(/timeout/i);
    silent.close();
  });
});
