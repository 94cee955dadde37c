import { randomUUID } from 'node:crypto';
import { openDatabase, organisations, persons, roles, sessions } from '#persistence';
import { Database } from '../../apps/api/src/platform/database/database.js';
import { AccessMemory } from '../../apps/api/src/platform/identity/access-memory.js';
import { LiveBus } from '../../apps/api/src/platform/live/live-bus.js';
import { migratedDatabase, type TestDatabase } from '../support/database.js';

const ORGANISATION = randomUUID();
const NOTHING = { meetId: null, competitionId: null, callingGroupId: null, athleteId: null };

/** Counts what is read, and can be made slow or broken. */
class Watched extends Database {
  reads = 0;
  isAway = false;
  before: Promise<void> = Promise.resolve();

  override async read<T>(work: Parameters<Database['read']>[0]): Promise<T> {
    this.reads += 1;
    if (this.isAway) throw new Error('away');
    const result = (await super.read(work)) as T;
    await this.before;
    return result;
  }
}

describe('what is remembered of an account', () => {
  let stored: TestDatabase;
  let database: Watched;
  let memory: AccessMemory;
  let nowMs = 0;
  let personId: string;
  let sessionId: string;

  beforeAll(async () => {
    stored = await migratedDatabase();
    database = new Watched(await openDatabase({ url: stored.url }));
    await database.write((tx) => organisations.insert(tx, { id: ORGANISATION, name: 'Heron Field' }));
  });
  afterAll(async () => {
    await database.source.destroy();
    await stored.drop();
  });

  beforeEach(async () => {
    [personId, sessionId] = [randomUUID(), randomUUID()];
    const name = { loginName: `person-${personId}`, displayName: 'Orla Fennick', isDemo: false };
    await database.write(async (tx) => {
      await persons.insert(tx, { organisationId: ORGANISATION, id: personId, ...name, madeBy: 'test' });
      await sessions.insert(tx, { organisationId: ORGANISATION, id: sessionId, personId, label: null });
    });
    nowMs = 1_000_000;
    memory = new AccessMemory(database, new LiveBus(), () => nowMs);
    Object.assign(database, { reads: 0, isAway: false, before: Promise.resolve() });
  });

  const look = () => memory.person(ORGANISATION, personId, sessionId);

  /** As another process does it, which tells this one nothing. */
  const giveAdmin = () =>
    database.write((tx) =>
      roles.give(tx, {
        ...{ organisationId: ORGANISATION, id: randomUUID(), personId, role: 'admin', ...NOTHING },
        ...{ startsAt: null, endsAt: null, reason: null, givenBy: 'test' },
      }),
    );

  it('is read once, however many requests come', async () => {
    for (let time = 0; time < 100; time += 1) expect((await look())?.grants).toEqual([]);
    expect(database.reads).toBe(1);
  });

  it('hears of other processes within half a minute, and of its own at once', async () => {
    await look();
    await giveAdmin();
    nowMs += 29_999;
    expect((await look())?.grants).toEqual([]);
    nowMs += 1;
    expect((await look())?.grants).toHaveLength(1);
    await giveAdmin();
    await memory.changed(ORGANISATION, personId);
    expect((await look())?.grants).toHaveLength(2);
  });

  it('is looked for again when the session is a new one', async () => {
    await look();
    const later = randomUUID();
    await database.write((tx) =>
      sessions.insert(tx, { organisationId: ORGANISATION, id: later, personId, label: null }),
    );
    expect((await memory.person(ORGANISATION, personId, later))?.sessions.has(later)).toBe(true);
  });

  it('is not overwritten by what was read before a change', async () => {
    let goOn = (): void => undefined;
    database.before = new Promise((resolve) => (goOn = resolve));
    const slow = look();
    // The slow reading has its answer and has not handed it over yet.
    await new Promise((resolve) => setTimeout(resolve, 100));
    database.before = Promise.resolve();
    await giveAdmin();
    await memory.changed(ORGANISATION, personId);
    goOn();
    expect((await slow)?.grants).toHaveLength(1);
    expect(memory.grantsOf(ORGANISATION, personId, sessionId)).toHaveLength(1);
  });

  it('goes on while the database is away, for those who are known', async () => {
    const known = await look();
    database.isAway = true;
    nowMs += 60_000;
    expect(await look()).toEqual(known);
    await expect(memory.person(ORGANISATION, randomUUID(), sessionId)).rejects.toThrow('away');
  });

  it('is nothing once the session has ended', async () => {
    await giveAdmin();
    await look();
    expect(memory.grantsOf(ORGANISATION, personId, sessionId)).toHaveLength(1);
    await database.write((tx) => sessions.end(tx, ORGANISATION, sessionId, 'signed-out'));
    await memory.changed(ORGANISATION, personId);
    expect(memory.grantsOf(ORGANISATION, personId, sessionId)).toEqual([]);
  });

  it('knows what is revoked, and forgets it for no reading that was under way', async () => {
    const [here, elsewhere] = [randomUUID(), randomUUID()];
    expect(await memory.isRevoked(here, elsewhere)).toBe(false);
    memory.revoke(here);
    const row = { organisationId: ORGANISATION, tokenId: elsewhere, reason: 'lost', revokedBy: 'test' };
    await database.write((tx) => sessions.revokeToken(tx, row));
    expect([await memory.isRevoked(here), await memory.isRevoked(elsewhere)]).toEqual([true, false]);
    nowMs += 30_000;
    expect([await memory.isRevoked(here), await memory.isRevoked(null, elsewhere)]).toEqual([true, true]);
  });
});
