import type { QueryRunner } from 'typeorm';
import { MIGRATIONS } from '../../../../migrations/index.js';
import { openForMigration } from '../data-source.js';
import { migrate } from '../migrate.js';
import { BackupUnusable, readHead, type BackupHead, type BackupSize } from './backup-format.js';
import { readLines } from './read-lines.js';
import { tablesInOrder } from './tables.js';

export interface Restored extends BackupSize {
  readonly head: BackupHead;
  /** Migrations that are newer than the backup and ran after it. */
  readonly migrated: readonly string[];
}

/** Rows that are stored at once. */
const BATCH = 500;

/**
 * Puts a backup into an empty database, as the program was that wrote it, and brings it up to date. All of it is
 * there, or nothing: foreign keys and constraints look at every row. Throws `BackupUnusable`, or the database's error.
 */
export async function restoreBackup(url: string, path: string): Promise<Restored> {
  const read = readLines(path);
  const head = readHead(await nextLine(read));
  const known = MIGRATIONS.slice(0, head.migrations.length).map(({ name }) => name);
  if (known.join() !== head.migrations.join())
    throw new BackupUnusable('The backup was written by a newer or another program: install that one first.');
  await demandEmpty(url);
  await migrate(url, head.migrations.length);
  const size = await store(url, read);
  return { head, ...size, migrated: await migrate(url) };
}

async function demandEmpty(url: string): Promise<void> {
  const database = await openForMigration({ url, poolSize: 1 });
  try {
    const tables = await database.query<unknown[]>(
      `SELECT FROM pg_tables WHERE schemaname = current_schema()`,
    );
    if (tables.length > 0)
      throw new BackupUnusable(
        'The database is not empty: a backup is restored into a new one, never over another.',
      );
  } finally {
    await database.destroy();
  }
}

type Lines = AsyncIterator<string>;

async function store(url: string, lines: Lines): Promise<BackupSize> {
  const database = await openForMigration({ url, poolSize: 1, applicationName: 'sectorline restore' });
  const runner = database.createQueryRunner();
  try {
    await runner.startTransaction();
    const tables = await tablesInOrder(runner);
    await switchTriggers(runner, tables, 'DISABLE');
    // What migrations brought along is in the backup as well.
    if (tables.length > 0) await runner.query(`TRUNCATE ${tables.join(', ')}`);
    const size = await storeRows(runner, lines, new Set(tables));
    await switchTriggers(runner, tables, 'ENABLE');
    await runner.commitTransaction();
    return size;
  } catch (error) {
    await runner.rollbackTransaction().catch(() => undefined);
    throw error;
  } finally {
    await runner.release();
    await database.destroy();
  }
}

/** Triggers of ours count entries as they come in; these have been counted. Foreign keys stay on. */
async function switchTriggers(
  runner: QueryRunner,
  tables: readonly string[],
  how: 'ENABLE' | 'DISABLE',
): Promise<void> {
  for (const table of tables) await runner.query(`ALTER TABLE ${table} ${how} TRIGGER USER`);
}

async function storeRows(
  runner: QueryRunner,
  lines: Lines,
  tables: ReadonlySet<string>,
): Promise<BackupSize> {
  let table: string | null = null;
  const counted = { tables: 0, rows: 0 };
  let batch: string[] = [];
  const flush = async (): Promise<void> => {
    if (batch.length === 0) return;
    await runner.query(
      `INSERT INTO ${table!} SELECT * FROM jsonb_populate_recordset(NULL::${table!}, $1::jsonb)`,
      [`[${batch.join(',')}]`],
    );
    batch = [];
  };
  for (;;) {
    const line = await nextLine(lines);
    const content = line.slice(2);
    if (line.startsWith('R ') && table !== null) {
      counted.rows += 1;
      batch.push(content);
      if (batch.length === BATCH) await flush();
    } else if (line.startsWith('T ') && tables.has(content)) {
      await flush();
      counted.tables += 1;
      table = content;
    } else if (line.startsWith('E ')) {
      await flush();
      if (content !== JSON.stringify(counted))
        throw new BackupUnusable(`The backup should have ${content}, and has ${JSON.stringify(counted)}.`);
      return counted;
    } else throw new BackupUnusable(`The backup has a line that is none of its own: ${line.slice(0, 40)}`);
  }
}

/** Also what gzip finds out about a damaged file comes out here. */
async function nextLine(lines: Lines): Promise<string> {
  let next;
  try {
    next = await lines.next();
  } catch (error) {
    throw new BackupUnusable(
      `The file cannot be read: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
  if (next.done === true) throw new BackupUnusable('The file ends too early: it is not whole.');
  return next.value;
}
