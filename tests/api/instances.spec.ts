import { competitions, type Reads } from '#persistence';
import { CompetitionMemory } from '../../apps/api/src/platform/competition/competition-memory.js';
import { Database } from '../../apps/api/src/platform/database/database.js';
import { readGlobalId } from '../../apps/api/src/platform/inputs/global-id.js';
import { CompetitionChanges } from '../../apps/api/src/platform/live/competition-changes.js';
import { call, giveRole, signedInPerson } from '../support/accounts.js';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { cutBus, eventually, losing, throughPostgres } from '../support/live.js';
import { plannedTrials } from '../support/planned-trials.js';

const VERSION = 'query ($id: ID!) { competition(id: $id) { version table { version } } }';

let one: TestApi;
let other: TestApi;
/** What the other instance loses of what it hears. */
let isLost: (nth: number) => boolean = () => false;

beforeAll(async () => {
  one = await startApi({ live: throughPostgres });
  other = await startApi({ beside: one, live: losing((nth) => isLost(nth)) });
});
afterAll(async () => {
  await other.close();
  await one.close();
});
beforeEach(() => {
  isLost = () => false;
});

async function versionAt(api: TestApi, id: string): Promise<number> {
  return (await api.data(VERSION, { id })).competition.table.version;
}

/** Records on the one instance while somebody reads at the other; the versions that were seen there, in order. */
async function watched(circle: Circle, seed: number, during?: () => Promise<unknown>): Promise<number[]> {
  const { id } = circle.competition;
  const seen: number[] = [await versionAt(other, id)];
  let newest = Infinity;
  const reading = eventually(
    async () => {
      const version = await versionAt(other, id);
      if (version !== seen.at(-1)) seen.push(version);
      return version;
    },
    (version) => version === newest,
  );
  const trials = plannedTrials(4, 6, seed).slice(0, 12);
  for (const [at, { bib, round, cell }] of trials.entries()) {
    if (at === 5) await during?.();
    const { competition } = await circle.record(Number(bib), round, cell);
    if (at === trials.length - 1) newest = competition.version;
  }
  await reading;
  expect(seen.at(-1)).toBe(newest);
  return seen;
}

const rising = (versions: readonly number[]): number[] => [...new Set(versions)].sort((a, b) => a - b);

describe('two instances on one database', () => {
  it('show what was recorded at the other one, and never anything older than before', async () => {
    const seen = await watched(await Circle.open(one, discusSheet(4)), 1);
    expect(seen).toEqual(rising(seen));
  });

  it('are right again when every message is lost', async () => {
    isLost = () => true;
    const seen = await watched(await Circle.open(one, discusSheet(4)), 2);
    expect(seen).toEqual(rising(seen));
  });

  it('are right again when a tenth is lost and the bus is cut in between', async () => {
    isLost = (nth) => nth % 10 === 3;
    const cut: number[] = [];
    const during = async (): Promise<void> => void cut.push(await cutBus(one.databaseUrl));
    const seen = await watched(await Circle.open(one, discusSheet(4)), 3, during);
    expect(cut).toEqual([2]);
    expect(seen).toEqual(rising(seen));
  });

  it('decide on the newest state, wherever an entry comes in', async () => {
    const circle = await Circle.open(one, discusSheet(4));
    isLost = () => true;
    await versionAt(other, circle.competition.id);
    const standings: string[] = [];
    for (const [at, { bib, round, cell }] of plannedTrials(4, 6, 4).slice(0, 8).entries()) {
      const there = at % 2 === 0 ? circle : Object.assign(Object.create(circle) as Circle, { api: other });
      standings.push((await there.record(Number(bib), round, cell)).entry.standing);
    }
    expect(standings).toEqual(Array.from({ length: 8 }, () => 'ACCEPTED'));
  });

  it('know at once of a role that was taken, of a session that ended and of a token that was revoked', async () => {
    const person = await signedInPerson(one);
    const grantId = await giveRole(one, person.id, { role: 'ADMIN' });
    const codeFor = async (token: string): Promise<string | undefined> => {
      const { errors } = await other.send('{ people(first: 1) { edges { cursor } } }', {}, token);
      return errors?.[0]?.extensions.code;
    };
    const becomes = (token: string, code: string | undefined) =>
      eventually(
        () => codeFor(token),
        (seen) => seen === code,
      );
    expect(await becomes(person.accessToken, undefined)).toBeUndefined();
    await call(one, 'roleRevoke', { grantId, reason: 'left' }, 'userErrors { code }', one.adminToken);
    expect(await becomes(person.accessToken, 'FORBIDDEN')).toBe('FORBIDDEN');
    await call(one, 'signOut', {}, 'isSignedOut', person.accessToken);
    expect(await becomes(person.accessToken, 'UNAUTHENTICATED')).toBe('UNAUTHENTICATED');
    const post = await one.token('admin');
    expect(await codeFor(post)).toBeUndefined();
    await call(one, 'signOut', {}, 'isSignedOut', post);
    expect(await becomes(post, 'UNAUTHENTICATED')).toBe('UNAUTHENTICATED');
  });
});

/** A database whose replica is one moment of it. */
class Behind extends Database {
  /** Readings that the replica answered. */
  served = 0;
  isAway = false;

  constructor(
    source: Database['source'],
    private readonly moment: Reads,
  ) {
    super(source);
  }

  override async replicaSnapshot<T>(work: (at: Reads) => Promise<T>): Promise<T> {
    if (this.isAway) throw new Error('away');
    const answer = await work(this.moment);
    if (answer !== null) this.served += 1;
    return answer;
  }
}

describe('a replica', () => {
  it('is read for what is finished, while it has the newest version, and never brings an older one back', async () => {
    const circle = await Circle.open(one, discusSheet(2));
    await circle.recordCard(['50.00'], ['51.00']);
    const signed = await circle.enter(
      'competitionSignOff',
      { expectedVersion: (await circle.read()).version, incomplete: 'rain' },
      circle.referee,
    );
    expect(signed.userErrors).toEqual([]);
    const { uuid } = readGlobalId(circle.competition.id)!;
    await one.database.snapshot(async (at) => {
      // What a snapshot sees stands still, like a replica that hangs behind.
      await competitions.versionOf(at, one.organisationId, uuid);
      const database = new Behind(one.database.source, at);
      const read = async () =>
        new CompetitionMemory(database, new CompetitionChanges()).current(one.organisationId, uuid);
      expect((await read())?.row.version).toBe(signed.competition.version);
      expect(database.served).toBe(1);
      const again = { reason: 'a mark was wrong' };
      const reopened = await circle.enter('competitionReopen', again, circle.director);
      expect(reopened.userErrors).toEqual([]);
      expect((await read())?.row.version).toBe(reopened.competition.version);
      expect(database.served).toBe(1);
      database.isAway = true;
      expect((await read())?.row.version).toBe(reopened.competition.version);
    });
  });
});
