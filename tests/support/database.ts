import { randomBytes } from 'node:crypto';
import { basename, join } from 'node:path';
import pg from 'pg';
import { migrate, startEmbedded } from '#persistence';

/** A database for one test file: nobody else sees it. */
export interface TestDatabase {
  readonly url: string;
  /** Ends whoever is still connected and removes it. */
  drop(): Promise<void>;
}

/** A fresh database with all migrations, on the server of DATABASE_URL or on the embedded one of this test run. */
export async function migratedDatabase(): Promise<TestDatabase> {
  const server = await serverUrl();
  const template = await migratedTemplate(server);
  return createDatabase(server, `TEMPLATE ${template}`);
}

/** A fresh database with nothing in it. */
export async function emptyDatabase(): Promise<TestDatabase> {
  return createDatabase(await serverUrl(), 'TEMPLATE template0');
}

/** Another database with the same in it, to which nobody is connected at that moment. */
export async function copyOf({ url }: TestDatabase): Promise<TestDatabase> {
  return createDatabase(await serverUrl(), `TEMPLATE ${new URL(url).pathname.slice(1)}`);
}

/** Runs statements on a connection of their own, with the rights of the login in `url`. */
export async function onConnection<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

let embedded: Promise<string> | undefined;

/** A login that may create databases: the one in DATABASE_URL, or the embedded server's owner. */
export async function serverUrl(): Promise<string> {
  const given = process.env.DATABASE_URL;
  if (given !== undefined && given !== '') return given;
  embedded ??= startEmbedded({
    home: join(runDirectory(), 'home'),
    database: 'postgres',
    // It ends with the run, whatever its users think.
    revive: false,
  }).then(({ url }) => url);
  return embedded;
}

/** The same server and login, another database. */
export function urlOf(server: string, database: string): string {
  const url = new URL(server);
  url.pathname = `/${database}`;
  return url.toString();
}

/** The directory of this test run, removed after it. */
export function runDirectory(): string {
  const directory = process.env.SECTORLINE_TEST_RUN;
  if (directory === undefined)
    throw new Error('Tests that need a database run under jest.config.cjs: npm test.');
  return directory;
}

function nameOf(rest: string): string {
  return `${basename(runDirectory())
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '_')}_${rest}`;
}

async function createDatabase(server: string, how: string): Promise<TestDatabase> {
  const name = nameOf(randomBytes(6).toString('hex'));
  await onConnection(server, (client) => client.query(`CREATE DATABASE ${name} ${how}`));
  return {
    url: urlOf(server, name),
    drop: () =>
      onConnection(server, async (client) => void (await client.query(`DROP DATABASE ${name} WITH (FORCE)`))),
  };
}

const TEMPLATE_LOCK = 7_305_222;

/** Migrated once for each run; whoever comes first makes it while the others wait. */
async function migratedTemplate(server: string): Promise<string> {
  const name = nameOf('template');
  const making = `${name}_making`;
  return onConnection(server, async (client) => {
    await client.query('SELECT pg_advisory_lock($1)', [TEMPLATE_LOCK]);
    const { rowCount } = await client.query('SELECT FROM pg_database WHERE datname = $1', [name]);
    if (rowCount === 0) {
      await client.query(`DROP DATABASE IF EXISTS ${making}`);
      await client.query(`CREATE DATABASE ${making} TEMPLATE template0`);
      await migrate(urlOf(server, making));
      await client.query(`ALTER DATABASE ${making} RENAME TO ${name}`);
    }
    return name;
  });
}
