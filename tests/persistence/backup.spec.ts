import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { migrate, restoreBackup, revertMigration, writeBackup } from '#persistence';
import { MIGRATIONS } from '../../migrations/index.js';
import { emptyDatabase, onConnection, type TestDatabase } from '../support/database.js';
import { populate } from './fixture.js';

const NAMES = MIGRATIONS.map(({ name }) => name);
const TAKEN_AT = new Date('2026-05-16T14:03:00Z');

let folder: string;
let path: string;
let source: TestDatabase;
const opened: TestDatabase[] = [];

async function anotherDatabase(): Promise<TestDatabase> {
  const database = await emptyDatabase();
  opened.push(database);
  return database;
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sectorline-backup-'));
  path = join(folder, 'kept', 'whole.backup');
  source = await anotherDatabase();
  await migrate(source.url);
  await populate(source.url);
});
afterAll(async () => {
  for (const database of opened) await database.drop();
  await rm(folder, { recursive: true, force: true });
});

/** Every row of every table as text, so that nothing is rounded on its way here. */
async function everythingIn({ url }: TestDatabase): Promise<Record<string, string[]>> {
  return onConnection(url, async (client) => {
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> 'schema_migration'`,
    );
    const found: Record<string, string[]> = {};
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: string }>(
        `SELECT t::text AS row FROM ${name} AS t ORDER BY 1`,
      );
      found[name] = rows.map(({ row }) => row);
    }
    return found;
  });
}

async function damaged(name: string, text: string): Promise<string> {
  const file = join(folder, name);
  await writeFile(file, gzipSync(text));
  return file;
}

describe('a backup', () => {
  it('has everything, of one moment, and only its owner may read it', async () => {
    const size = await writeBackup(source.url, path, TAKEN_AT);
    const everything = await everythingIn(source);
    expect(size).toEqual({
      tables: Object.keys(everything).length,
      rows: Object.values(everything).flat().length,
    });
    expect(size.rows).toBeGreaterThan(size.tables);
    expect((await stat(path)).mode & 0o777).toBe(0o600);
    const [head = ''] = gunzipSync(await readFile(path))
      .toString()
      .split('\n');
    expect(JSON.parse(head)).toEqual({
      format: 'sectorline-backup/1',
      takenAt: '2026-05-16T14:03:00.000Z',
      migrations: NAMES,
    });
  });

  it('comes back to the last row, and the guards are on again', async () => {
    const target = await anotherDatabase();
    const restored = await restoreBackup(target.url, path);
    expect(restored.migrated).toEqual([]);
    expect(await everythingIn(target)).toEqual(await everythingIn(source));
    const off = await onConnection(target.url, (client) =>
      client.query(`SELECT FROM pg_trigger WHERE tgenabled <> 'O'`),
    );
    expect(off.rowCount).toBe(0);
    await expect(
      onConnection(target.url, (client) => client.query('DELETE FROM journal_entry')),
    ).rejects.toMatchObject({ constraint: 'journal_entry_insert_only' });
  });

  it('of an older program comes back, and is brought up to date', async () => {
    const older = await anotherDatabase();
    await migrate(older.url, NAMES.length - 3);
    await onConnection(older.url, (client) =>
      client.query(`INSERT INTO organisation (id, name) VALUES (gen_random_uuid(), 'Tarnwick Harriers')`),
    );
    const file = join(folder, 'older.backup');
    await writeBackup(older.url, file, TAKEN_AT);
    const target = await anotherDatabase();
    expect((await restoreBackup(target.url, file)).migrated).toEqual(NAMES.slice(-3));
    expect((await everythingIn(target))['organisation']).toEqual((await everythingIn(older))['organisation']);
    expect(await revertMigration(target.url)).toBe(NAMES.at(-1));
  });

  it('is never put over something else', async () => {
    await expect(restoreBackup(source.url, path)).rejects.toThrow('The database is not empty');
  });

  it('that is not whole, damaged or of somebody else stores nothing', async () => {
    const text = gunzipSync(await readFile(path)).toString();
    const lines = text.trimEnd().split('\n');
    const bytes = await readFile(path);
    await writeFile(join(folder, 'cut.backup'), bytes.subarray(0, bytes.length / 2));
    await writeFile(join(folder, 'no.backup'), 'Bib,Name');
    const files: [string, string][] = [
      [join(folder, 'cut.backup'), 'cannot be read'],
      [join(folder, 'no.backup'), 'cannot be read'],
      [join(folder, 'nowhere.backup'), 'cannot be read'],
      [await damaged('short', `${lines.slice(0, -1).join('\n')}\n`), 'ends too early'],
      [
        await damaged('row-less', `${lines.filter((_, at) => at !== lines.length - 2).join('\n')}\n`),
        'should have',
      ],
      [
        await damaged('other', text.replace('sectorline-backup/1', 'other/1')),
        'is not a sectorline-backup/1',
      ],
      [await damaged('newer', text.replace(NAMES.at(-1)!, 'Tomorrow')), 'newer or another program'],
      [await damaged('line', text.replace('\nT ', '\nU ')), 'none of its own'],
    ];
    for (const [file, words] of files) {
      const target = await anotherDatabase();
      await expect(restoreBackup(target.url, file)).rejects.toThrow(words);
      const left = Object.values(await everythingIn(target)).flat();
      expect([file, left]).toEqual([file, []]);
    }
  });

  it('leaves the last one where it is when it cannot be written', async () => {
    const before = await readFile(path);
    await expect(writeBackup(`${source.url}_gone`, path, TAKEN_AT)).rejects.toThrow();
    expect(await readFile(path)).toEqual(before);
  });
});
