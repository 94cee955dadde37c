import { DataSource } from 'typeorm';
import { openDatabase, schemaDifference, type Database } from '#persistence';
import { openForMigration } from '../../libs/persistence/src/data-source.js';
import { emptyDatabase, migratedDatabase, onConnection, type TestDatabase } from '../support/database.js';

/**
 * Constraints, indexes and columns as PostgreSQL itself says them; the bookkeeping of migrations aside. What a domain
 * says of a value is in the migrations alone, and so is an index with included columns.
 */
const CONSTRAINTS = `
  SELECT conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid) AS line FROM pg_constraint
   WHERE connamespace = 'public'::regnamespace AND conrelid <> 0 AND contype <> 't' AND contype <> 'n'
     AND conrelid::regclass::text <> 'schema_migration' ORDER BY 1`;
const INDEXES = `
  SELECT indexdef AS line FROM pg_indexes WHERE schemaname = 'public' AND tablename <> 'schema_migration'
     AND indexdef NOT LIKE '% INCLUDE (%' ORDER BY 1`;
const COLUMNS = `
  SELECT table_name || '.' || column_name || ' ' || data_type || ' ' || is_nullable || ' ' || coalesce(column_default, '') AS line
    FROM information_schema.columns WHERE table_schema = 'public' AND table_name <> 'schema_migration' ORDER BY 1`;

async function linesOf(url: string, query: string): Promise<string[]> {
  return onConnection(url, async (client) =>
    (await client.query<{ line: string }>(query)).rows.map(({ line }) => line),
  );
}

/** A column with a domain is cast to what the domain is made of wherever it is used; entities know no domains. */
function withoutCasts(line: string): string {
  return line.replaceAll(/::\w+/g, '').replaceAll(/[()]/g, '');
}

describe('the schema', () => {
  let migrated: TestDatabase;
  let database: Database;

  beforeAll(async () => {
    migrated = await migratedDatabase();
    database = await openForMigration({ url: migrated.url });
  });

  afterAll(async () => {
    await database.destroy();
    await migrated.drop();
  });

  it('that migrations make is the one that the entities describe', async () => {
    expect(await schemaDifference(database)).toEqual([]);
  });

  it('is the same to the last expression when it is made from the entities', async () => {
    const described = await emptyDatabase();
    try {
      const fromEntities = await openForMigration({ url: described.url });
      const statements = await schemaDifference(fromEntities);
      await fromEntities.destroy();
      await onConnection(described.url, async (client) => {
        for (const statement of statements) await client.query(statement);
      });
      for (const query of [CONSTRAINTS, INDEXES, COLUMNS]) {
        const lines = await linesOf(migrated.url, query);
        expect(lines.length).toBeGreaterThan(5);
        expect((await linesOf(described.url, query)).map(withoutCasts)).toEqual(lines.map(withoutCasts));
      }
    } finally {
      await described.drop();
    }
  });

  it('has the organisation first in the key of every table', async () => {
    const keys = await linesOf(
      migrated.url,
      `SELECT conrelid::regclass || ' ' || pg_get_constraintdef(oid) AS line FROM pg_constraint
        WHERE contype = 'p' AND connamespace = 'public'::regnamespace AND conrelid::regclass::text <> 'schema_migration' ORDER BY 1`,
    );
    expect(keys.length).toBeGreaterThan(10);
    for (const key of keys)
      expect(key).toMatch(/^organisation PRIMARY KEY \(id\)$|PRIMARY KEY \(organisation_id, /);
  });

  it('is never changed by opening it', async () => {
    const open = await openDatabase({ url: migrated.url });
    expect(open).toBeInstanceOf(DataSource);
    expect(open.options.synchronize).toBe(false);
    await open.destroy();
  });
});
