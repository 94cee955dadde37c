import { createHash } from 'node:crypto';
import { migrate, migrationsPending, openDatabase, revertMigration } from '#persistence';
import { MIGRATIONS } from '../../migrations/index.js';
import { copyOf, emptyDatabase, onConnection, type TestDatabase } from '../support/database.js';
import { populate } from './fixture.js';

const NAMES = MIGRATIONS.map(({ name }) => name);

/** From where on migrations are brought back: the newest, and one of several before them; all of them take minutes. */
const FROM = NAMES.map((_, at) => at).filter(
  (at) => process.env['LONG'] === '1' || at >= NAMES.length - 2 || at % 6 === 0,
);

type Contents = ReadonlyMap<string, readonly Readonly<Record<string, unknown>>[]>;

/** All rows of each table, by the table's name. */
async function contents(url: string): Promise<Contents> {
  return onConnection(url, async (client) => {
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> 'schema_migration'`,
    );
    const found = new Map<string, Readonly<Record<string, unknown>>[]>();
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: Record<string, unknown> }>(
        `SELECT to_jsonb(t) AS row FROM ${name} t ORDER BY t::text`,
      );
      found.set(
        name,
        rows.map(({ row }) => row),
      );
    }
    return found;
  });
}

/** A fingerprint of the rows of a table, as far as they have these columns. */
function fingerprint(
  rows: Contents extends ReadonlyMap<string, infer R> ? R : never,
  columns: readonly string[],
): string {
  const texts = rows.map((row) => JSON.stringify(columns.map((column) => row[column])));
  return createHash('sha256').update(JSON.stringify(texts.sort())).digest('hex');
}

/** Nothing that is still there has changed; a column may have gone, or come. */
function expectUntouched(after: Contents, before: Contents): void {
  for (const [table, rows] of after) {
    const was = before.get(table) ?? [];
    const columns = Object.keys(rows[0] ?? {}).filter((column) => was.length === 0 || column in was[0]!);
    expect([table, fingerprint(rows, columns)]).toEqual([table, fingerprint(was, columns)]);
  }
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
    const bare = [...full].filter(([, rows]) => rows.length === 0).map(([name]) => name);
    expect(bare).toEqual([]);
    let before = full;
    for (const name of [...NAMES].reverse()) {
      expect(await revertMigration(test.url)).toBe(name);
      const after = await contents(test.url);
      expectUntouched(after, before);
      before = after;
    }
    expect(before.size).toBe(0);
    expect(await revertMigration(test.url)).toBeNull();
    expect(await migrate(test.url)).toEqual(NAMES);
    expect(await contents(test.url)).toEqual(new Map([...full.keys()].map((name) => [name, []])));
  });

  it('bring back whatever was taken back, from one of them on, without touching the rest', async () => {
    await migrate(test.url);
    await populate(test.url);
    for (let at = NAMES.length - 1; at >= 0; at -= 1) {
      await revertMigration(test.url);
      if (!FROM.includes(at)) continue;
      const again = await copyOf(test);
      try {
        const left = await contents(again.url);
        expect(await migrate(again.url)).toEqual(NAMES.slice(at));
        expectUntouched(left, await contents(again.url));
      } finally {
        await again.drop();
      }
    }
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
