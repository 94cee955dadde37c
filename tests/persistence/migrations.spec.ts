import { createHash } from 'node:crypto';
import pg from 'pg';
import {
  competitions,
  inTransaction,
  journal,
  migrate,
  migrationsPending,
  officialResults,
  openDatabase,
  revertMigration,
} from '#persistence';
import { MIGRATIONS } from '../../migrations/index.js';
import {
  emptyDatabase,
  migratedDatabase,
  onConnection,
  serverUrl,
  type TestDatabase,
} from '../support/database.js';
import { attemptOf, makeScene } from './fixture.js';

const NAMES = MIGRATIONS.map(({ name }) => name);

async function populate(url: string): Promise<void> {
  const database = await openDatabase({ url });
  const scene = await makeScene(database);
  await inTransaction(database, async (tx) => {
    const { organisationId, competitionId } = scene;
    await competitions.lock(tx, organisationId, competitionId);
    await journal.append(tx, attemptOf(scene));
    await journal.append(tx, attemptOf(scene));
    await officialResults.archive(tx, {
      organisationId,
      competitionId,
      sequence: 2,
      sheet: {},
      result: {},
      signedBy: 'referee',
    });
  });
  await database.destroy();
}

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
    expect(full.size).toBe(8);
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
    ['the role', 1, 8],
    ['the archive', 2, 7],
    ['the journal', 3, 6],
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

/** Logins of a test of their own: roles belong to the whole server. */
describe('the application’s role', () => {
  const suffix = createHash('sha256').update(`${process.pid}-${Date.now()}`).digest('hex').slice(0, 8);
  const logins = { maker: `sectorline_maker_${suffix}`, plain: `sectorline_plain_${suffix}` };
  let server: string;

  async function asAdmin(...statements: string[]): Promise<void> {
    await onConnection(server, async (client) => {
      for (const statement of statements) await client.query(statement);
    });
  }

  function as(login: string, url: string): string {
    const address = new URL(url);
    address.username = login;
    address.password = 'secret';
    return address.toString();
  }

  beforeAll(async () => {
    server = await serverUrl();
    await asAdmin(
      `CREATE ROLE ${logins.maker} LOGIN CREATEROLE PASSWORD 'secret'`,
      `CREATE ROLE ${logins.plain} LOGIN PASSWORD 'secret'`,
    );
  });

  afterAll(() => asAdmin(...Object.values(logins).map((login) => `DROP ROLE ${login}`)));

  async function databaseOf(login: string): Promise<TestDatabase> {
    const test = await emptyDatabase();
    const name = new URL(test.url).pathname.slice(1);
    await asAdmin(`ALTER DATABASE ${pg.escapeIdentifier(name)} OWNER TO ${login}`);
    await onConnection(test.url, (client) => client.query(`GRANT ALL ON SCHEMA public TO ${login}`));
    return test;
  }

  async function whoAmI(url: string): Promise<string> {
    const database = await openDatabase({ url });
    try {
      const [row] = await database.query<{ name: string }[]>('SELECT current_user AS name');
      return row!.name;
    } finally {
      await database.destroy();
    }
  }

  it('is taken on by a login that may make roles', async () => {
    const test = await databaseOf(logins.maker);
    // Roles belong to the server: another database may have made it, then only its maker may give it away.
    await asAdmin(
      `DO $$ BEGIN IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
         GRANT sectorline_app TO ${logins.maker} WITH ADMIN OPTION; END IF; END $$`,
    );
    try {
      await migrate(as(logins.maker, test.url));
      expect(await whoAmI(as(logins.maker, test.url))).toBe('sectorline_app');
    } finally {
      await test.drop();
    }
  });

  it('is done without by a login that may not take it on', async () => {
    const test = await databaseOf(logins.plain);
    try {
      await migrate(as(logins.plain, test.url));
      expect(await whoAmI(as(logins.plain, test.url))).toBe(logins.plain);
      await populate(as(logins.plain, test.url));
    } finally {
      await test.drop();
    }
  });

  it('is taken on by a plain login to which an administrator gave it', async () => {
    const test = await databaseOf(logins.plain);
    try {
      await migrate(test.url);
      await asAdmin(`GRANT sectorline_app TO ${logins.plain}`);
      expect(await whoAmI(as(logins.plain, test.url))).toBe('sectorline_app');
      await populate(as(logins.plain, test.url));
    } finally {
      await asAdmin(`REVOKE sectorline_app FROM ${logins.plain}`);
      await test.drop();
    }
  });

  it('may add to journal and archive, may change neither, and removes nothing but lines of a start list', async () => {
    const test = await migratedDatabase();
    try {
      const rights = await onConnection(test.url, async (client) => {
        const { rows } = await client.query<{ line: string }>(
          `SELECT table_name || ': ' || string_agg(privilege_type, ' ' ORDER BY privilege_type) AS line
             FROM information_schema.role_table_grants WHERE grantee = 'sectorline_app' AND table_schema = 'public'
            GROUP BY table_name ORDER BY 1`,
        );
        return rows.map(({ line }) => line);
      });
      expect(rights).toEqual([
        'athlete: INSERT SELECT UPDATE',
        'club: INSERT SELECT UPDATE',
        'competition: INSERT SELECT UPDATE',
        'competitor: DELETE INSERT SELECT UPDATE',
        'journal_entry: INSERT SELECT',
        'meet: INSERT SELECT UPDATE',
        'official_result: INSERT SELECT',
        'organisation: INSERT SELECT UPDATE',
        'schema_migration: SELECT',
      ]);
    } finally {
      await test.drop();
    }
  });
});
