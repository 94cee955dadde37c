import type { DataSource, QueryRunner } from 'typeorm';
import { MIGRATIONS } from '../../../migrations/index.js';
import { openForMigration } from './data-source.js';
import { sqlStateOf } from './violation.js';

/** Any number that nothing else in the database locks. */
const MIGRATION_LOCK = 7_305_221;

const UNDEFINED_TABLE = '42P01';

/** Brings the database up to date, or as far as the first `count` migrations. Returns the names of those that ran. */
export async function migrate(url: string, count = MIGRATIONS.length): Promise<string[]> {
  return withMigrations(url, runMigrations, count);
}

/** Takes back the latest migration. Returns its name, or `null` when there is none left. */
export async function revertMigration(url: string): Promise<string | null> {
  return withMigrations(url, async (database) =>
    locked(database, async () => {
      const before = await applied(database);
      await database.undoLastMigration({ transaction: 'all' });
      const after = new Set(await applied(database));
      return before.find((name) => !after.has(name)) ?? null;
    }),
  );
}

/** As `migrate`, on a pool of at least two connections. Of several that start at once, one migrates and the others wait. */
export async function runMigrations(database: DataSource): Promise<string[]> {
  return locked(database, async () =>
    (await database.runMigrations({ transaction: 'all' })).map(({ name }) => name),
  );
}

/** Whether this program's migrations have not all run. Needs no more than the application's own rights. */
export async function migrationsPending(database: DataSource): Promise<boolean> {
  try {
    const done = new Set(await applied(database));
    return MIGRATIONS.some(({ name }) => !done.has(name));
  } catch (error) {
    if (sqlStateOf(error) === UNDEFINED_TABLE) return true;
    throw error;
  }
}

/** What TypeORM would change to make the database equal to the entities, as SQL: empty when migrations are current. */
export async function schemaDifference(database: DataSource): Promise<string[]> {
  const { upQueries } = await database.driver.createSchemaBuilder().log();
  return upQueries.map(({ query }) => query);
}

async function withMigrations<T>(
  url: string,
  work: (database: DataSource) => Promise<T>,
  count = MIGRATIONS.length,
): Promise<T> {
  const database = await openForMigration(
    { url, poolSize: 2, applicationName: 'sectorline migration' },
    MIGRATIONS.slice(0, count),
  );
  try {
    return await work(database);
  } finally {
    await database.destroy();
  }
}

/** A session's lock: it is released when the connection ends, however that happens. */
async function locked<T>(database: DataSource, work: () => Promise<T>): Promise<T> {
  const runner: QueryRunner = database.createQueryRunner();
  try {
    await runner.query('SELECT pg_advisory_lock($1)', [MIGRATION_LOCK]);
    try {
      return await work();
    } finally {
      await runner.query('SELECT pg_advisory_unlock($1)', [MIGRATION_LOCK]);
    }
  } finally {
    await runner.release();
  }
}

async function applied(database: DataSource): Promise<string[]> {
  const rows = await database.query<{ name: string }[]>(`SELECT name FROM schema_migration ORDER BY id DESC`);
  return rows.map(({ name }) => name);
}
