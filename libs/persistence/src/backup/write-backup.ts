import { createWriteStream } from 'node:fs';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import type { QueryRunner } from 'typeorm';
import { openForMigration } from '../data-source.js';
import { BACKUP_FORMAT, type BackupHead, type BackupSize } from './backup-format.js';
import { tablesInOrder } from './tables.js';

/** Rows that are fetched at once. */
const BATCH = 1_000;

/**
 * Writes everything that is stored, of one moment, into a file that only its owner may read; the server may go on. The
 * file has its name when it is whole and on the disk, so what lies under an old name stays until then. Throws the
 * errors of the database and of the disk.
 */
export async function writeBackup(url: string, path: string, takenAt: Date): Promise<BackupSize> {
  const database = await openForMigration({ url, poolSize: 1, applicationName: 'sectorline backup' });
  const partial = `${path}.part`;
  const size = { tables: 0, rows: 0 };
  try {
    await mkdir(dirname(path), { recursive: true, mode: 0o700 });
    const runner = database.createQueryRunner();
    await runner.query('START TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY');
    const text = Readable.from(linesOf(runner, takenAt, size));
    await pipeline(text, createGzip(), createWriteStream(partial, { mode: 0o600 }));
    await runner.query('COMMIT');
    await runner.release();
    await onDisk(partial);
    await rename(partial, path);
    await onDisk(dirname(path));
    return size;
  } catch (error) {
    await rm(partial, { force: true });
    throw error;
  } finally {
    await database.destroy();
  }
}

async function* linesOf(
  runner: QueryRunner,
  takenAt: Date,
  size: { tables: number; rows: number },
): AsyncGenerator<string> {
  const migrations = (await runner.query('SELECT name FROM schema_migration ORDER BY id')) as {
    readonly name: string;
  }[];
  const head: BackupHead = {
    format: BACKUP_FORMAT,
    takenAt: takenAt.toISOString(),
    migrations: migrations.map(({ name }) => name),
  };
  yield `${JSON.stringify(head)}\n`;
  for (const table of await tablesInOrder(runner)) {
    size.tables += 1;
    yield `T ${table}\n`;
    // In the order of storing: a row that names an earlier one of its own table comes after it.
    await runner.query(
      `DECLARE backup NO SCROLL CURSOR FOR SELECT to_jsonb(t)::text AS row FROM ${table} AS t ORDER BY ctid`,
    );
    for (;;) {
      const rows = (await runner.query(`FETCH ${BATCH} FROM backup`)) as { readonly row: string }[];
      if (rows.length === 0) break;
      size.rows += rows.length;
      // Texts in JSON have no line breaks of their own.
      yield rows.map(({ row }) => `R ${row}\n`).join('');
    }
    await runner.query('CLOSE backup');
  }
  yield `E ${JSON.stringify(size)}\n`;
}

async function onDisk(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
