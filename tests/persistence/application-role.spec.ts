import { createHash } from 'node:crypto';
import { join } from 'node:path';
import pg from 'pg';
import { migrate, openDatabase, startEmbedded } from '#persistence';
import {
  emptyDatabase,
  migratedDatabase,
  onConnection,
  runDirectory,
  serverUrl,
  type TestDatabase,
} from '../support/database.js';
import { populate } from './fixture.js';

async function whoAmI(url: string): Promise<string> {
  const database = await openDatabase({ url });
  try {
    const [row] = await database.query<{ name: string }[]>('SELECT current_user AS name');
    return row!.name;
  } finally {
    await database.destroy();
  }
}

function as(login: string, url: string): string {
  const address = new URL(url);
  address.username = login;
  address.password = 'secret';
  return address.toString();
}

/** Roles belong to the whole server: only on one of its own can it be seen whether a migration makes one. */
describe('on a server that has not seen the application yet, its role', () => {
  it('is made by a login that may make roles, and only by such a one', async () => {
    const server = await startEmbedded({
      home: join(runDirectory(), `role-${process.pid}`),
      database: 'postgres',
    });
    try {
      for (const [login, right] of [
        ['plain', ''],
        ['maker', 'CREATEROLE'],
      ] as const) {
        await onConnection(server.url, async (client) => {
          await client.query(`CREATE ROLE ${login} LOGIN ${right} PASSWORD 'secret'`);
          await client.query(`CREATE DATABASE ${login} OWNER ${login}`);
        });
        const url = as(login, server.url.replace(/postgres$/, login));
        await migrate(url);
        expect(await whoAmI(url)).toBe(login === 'maker' ? 'sectorline_app' : 'plain');
        await populate(url);
      }
    } finally {
      await server.stop();
    }
  });
});

/** By table, in order. */
const RIGHTS = [
  'age_factors: INSERT SELECT',
  'athlete: INSERT SELECT UPDATE',
  'calling_group: INSERT SELECT UPDATE',
  'category_definition: INSERT SELECT',
  'check_in: INSERT SELECT',
  'club: INSERT SELECT UPDATE',
  'combined_entrant: DELETE INSERT SELECT',
  'combined_entry: INSERT SELECT',
  'combined_event: INSERT SELECT UPDATE',
  'combined_link: INSERT SELECT',
  'combined_official_result: INSERT SELECT',
  'combined_request: INSERT SELECT',
  'competition: INSERT SELECT UPDATE',
  'competitor: DELETE INSERT SELECT UPDATE',
  'credential: INSERT SELECT UPDATE',
  'crew: INSERT SELECT',
  'decision_confirmation: INSERT SELECT',
  'decision_request: INSERT SELECT',
  'device_link: INSERT SELECT',
  'device_link_revocation: INSERT SELECT',
  'device_link_use: INSERT SELECT',
  'draw: INSERT SELECT',
  'draw_amendment: INSERT SELECT',
  'entered_result: INSERT SELECT',
  'entry_change: INSERT SELECT',
  'entry_terms: INSERT SELECT',
  'fault_change: INSERT SELECT',
  'implement: INSERT SELECT',
  'inspection: INSERT SELECT',
  'journal_entry: INSERT SELECT',
  'login_session: INSERT SELECT UPDATE',
  'meet: INSERT SELECT UPDATE',
  'meet_scoring: INSERT SELECT',
  'notebook_entry: INSERT SELECT',
  'observation: INSERT SELECT',
  'official_result: INSERT SELECT',
  'organisation: INSERT SELECT UPDATE',
  'past_result: INSERT SELECT',
  'person: INSERT SELECT UPDATE',
  'practice_session: INSERT SELECT',
  'practice_throw: INSERT SELECT',
  'protest: INSERT SELECT',
  'protest_step: INSERT SELECT',
  'qualification: DELETE INSERT SELECT UPDATE',
  'qualification_group: DELETE INSERT SELECT',
  'record_decision: INSERT SELECT',
  'refresh_token: INSERT SELECT',
  'result_posting: INSERT SELECT',
  'role_grant: INSERT SELECT',
  'role_revocation: INSERT SELECT',
  'schema_migration: SELECT',
  'starting_mark: INSERT SELECT',
  'table_import: INSERT SELECT',
  'timetable: INSERT SELECT',
  'token_revocation: INSERT SELECT',
];

describe('the application’s role', () => {
  const suffix = createHash('sha256').update(`${process.pid}-${Date.now()}`).digest('hex').slice(0, 8);
  const logins = { maker: `sectorline_maker_${suffix}`, plain: `sectorline_plain_${suffix}` };
  let server: string;

  async function asAdmin(...statements: string[]): Promise<void> {
    await onConnection(server, async (client) => {
      for (const statement of statements) await client.query(statement);
    });
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
      expect(rights).toEqual(RIGHTS);
    } finally {
      await test.drop();
    }
  });
});
