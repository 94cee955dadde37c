import { createHash } from 'node:crypto';
import { migrate, migrationsPending, openDatabase, revertMigration } from '#persistence';
import { MIGRATIONS } from '../../migrations/index.js';
import { emptyDatabase, onConnection, type TestDatabase } from '../support/database.js';
import { populate } from './fixture.js';

const NAMES = MIGRATIONS.map(({ name }) => name);

/** A fingerprint of all rows of each table, by the table's name. */
async function contents(url: string): Promise<Map<string, string>> {
  return onConnection(url, async (client) => {
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> 'schema_migration'`,
    );
    const hashes = new Map<string, string>();
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: string }>(`SELECT t::text AS row FROM ${name} t ORDER BY 1`);
      hashes.set(name, createHash('sha256').update(JSON.stringify(rows)).digest('hex'));
    }
    return hashes;
  });
}

describe('migrations', () => {
  let test: TestDatabase;

  beforeEach(async () => {
    test = await emptyDatabase();
  });

  afterEach(() => test.drop());

  it('go up, down one by one and up again on a populated database, and lose only what they take away', async () => {
    expect(await migrate(test.url)).toEqual(NAMES);
    await populate(test.url);
    const full = await contents(test.url);
    expect(full.size).toBe(10);
    const empty = new Map(
      [...full.keys()].map((name) => [name, createHash('sha256').update('[]').digest('hex')]),
    );
    let before = full;
    for (const name of [...NAMES].reverse()) {
      expect(await revertMigration(test.url)).toBe(name);
      const after = await contents(test.url);
      for (const [table, hash] of after) expect([table, before.get(table)]).toEqual([table, hash]);
      before = after;
    }
    expect(before.size).toBe(0);
    expect(await revertMigration(test.url)).toBeNull();
    expect(await migrate(test.url)).toEqual(NAMES);
    expect(await contents(test.url)).toEqual(empty);
  });

  it.each([
    ['the kinds of entry for safety', 1, 10],
    ['the entered results', 2, 9],
    ['the scoring', 3, 8],
    ['the role', 4, 8],
    ['the archive', 5, 7],
    ['the journal', 6, 6],
  ])('bring back %s without touching the rest', async (_, steps, surviving) => {
    await migrate(test.url);
    await populate(test.url);
    for (let step = 0; step < steps; step += 1) await revertMigration(test.url);
    const left = await contents(test.url);
    expect(left.size).toBe(surviving);
    expect(await migrate(test.url)).toEqual(NAMES.slice(NAMES.length - steps));
    const again = await contents(test.url);
    for (const [table, hash] of left) expect([table, again.get(table)]).toEqual([table, hash]);
  });

  it('leave nothing behind when they are all taken back', async () => {
    await migrate(test.url);
    while ((await revertMigration(test.url)) !== null);
    const left = await onConnection(test.url, async (client) => {
      const { rows } = await client.query<{ name: string }>(
        `SELECT relname AS name FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind = 'r'
         UNION ALL SELECT proname FROM pg_proc WHERE pronamespace = 'public'::regnamespace`,
      );
      return rows.map(({ name }) => name);
    });
    expect(left).toEqual(['schema_migration']);
  });

  it('run once though several instances start at once', async () => {
    const ran = await Promise.all([
      migrate(test.url),
      migrate(test.url),
      migrate(test.url),
      migrate(test.url),
    ]);
    expect(ran.flat().sort()).toEqual([...NAMES].sort());
  });

  it('are known to be missing, in part or altogether', async () => {
    const pending = async (): Promise<boolean> => {
      const database = await openDatabase({ url: test.url });
      try {
        return await migrationsPending(database);
      } finally {
        await database.destroy();
      }
    };
    expect(await pending()).toBe(true);
    await migrate(test.url);
    expect(await pending()).toBe(false);
    await revertMigration(test.url);
    expect(await pending()).toBe(true);
  });
});
