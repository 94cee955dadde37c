import { chmod, lstat, mkdir, readFile, readlink, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { startEmbedded } from '#persistence';
import { canEnter, canReach, type Account } from '../../libs/persistence/src/embedded/account.js';
import { copyOut, installedBinaries, repairLinks } from '../../libs/persistence/src/embedded/binaries.js';
import { run } from '../../libs/persistence/src/embedded/run.js';
import { onConnection, runDirectory } from '../support/database.js';
import { otherProcess } from './other-process.js';

const isRoot = process.getuid?.() === 0;
const NOBODY = 65534;

let places = 0;

async function newDirectory(mode: number): Promise<string> {
  places += 1;
  const path = join(runDirectory(), `place-${process.pid}-${places}`);
  await mkdir(path);
  await chmod(path, mode);
  return path;
}

async function remember(url: string): Promise<void> {
  await onConnection(url, (client) => client.query('CREATE TABLE remembered ()'));
}

async function tables(url: string): Promise<unknown[]> {
  return onConnection(url, async (client) => {
    const { rows } = await client.query(`SELECT tablename FROM pg_tables WHERE schemaname = 'public'`);
    return rows;
  });
}

describe('a home where only its owner may enter', () => {
  it('is left by root’s server, which is found again, and kept by everybody else’s', async () => {
    const closed = await newDirectory(0o700);
    const home = join(closed, '.sectorline');
    const systemState = join(await newDirectory(0o711), 'state');
    const options = { home, systemState };
    const first = await startEmbedded(options);
    await remember(first.url);
    await first.stop();

    const pointer = await readFile(join(home, 'postgres-lives-at'), 'utf8').catch(() => null);
    if (isRoot) expect(pointer?.startsWith(`${systemState}/`)).toBe(true);
    else expect(pointer).toBeNull();

    const second = await startEmbedded(options);
    expect(await tables(second.url)).toEqual([{ tablename: 'remembered' }]);
    await second.stop();
  });

  it('says where the data was when it is gone, and does not begin anew behind one’s back', async () => {
    const home = await newDirectory(0o711);
    await writeFile(join(home, 'postgres-lives-at'), '/nowhere/to/be/found\n');
    const starting = startEmbedded({ home });
    await expect(starting).rejects.toMatchObject({ fault: 'DATA_GONE' });
    await expect(starting).rejects.toThrow('/nowhere/to/be/found');
  });
});

describe('who the server runs as', () => {
  it('is a normal user who starts it, and that user’s data stays that user’s when root starts it next', async () => {
    const home = join(await newDirectory(0o777), 'home');
    const user = isRoot ? NOBODY : undefined;
    const other = await otherProcess({ home }, user);
    // A checkout that a normal user may not enter has no programs for that user, and that is what is said.
    if (other.answer.fault === 'NO_BINARIES') {
      expect(await canReach(nobody(), (await installedBinaries()).postgres)).toBe(false);
      return;
    }
    expect(other.answer).toEqual({ url: expect.any(String), adopted: false });
    await remember(other.answer.url!);
    const { uid } = await stat(join(home, 'postgres'));
    expect(uid).toBe(user ?? process.getuid?.());
    await other.end();

    const server = await startEmbedded({ home });
    expect(await tables(server.url)).toEqual([{ tablename: 'remembered' }]);
    expect((await stat(join(home, 'postgres', 'postmaster.pid'))).uid).toBe(uid);
    await server.stop();
  });
});

function nobody(): Account {
  return { name: 'nobody', uid: NOBODY, gid: NOBODY };
}

describe('what an account may reach', () => {
  it('is decided by every directory on the way', async () => {
    const outer = await newDirectory(0o711);
    const inner = join(outer, 'inner');
    await mkdir(inner, { mode: 0o755 });
    await chmod(inner, 0o755);
    const file = join(inner, 'file');
    await writeFile(file, '');
    await chmod(file, 0o644);
    const stranger: Account = { name: 'stranger', uid: 4242, gid: 4242 };
    expect([await canEnter(stranger, inner), await canReach(stranger, file)]).toEqual([true, true]);
    await chmod(file, 0o600);
    expect(await canReach(stranger, file)).toBe(false);
    await chmod(file, 0o644);
    await chmod(outer, 0o700);
    expect([await canEnter(stranger, inner), await canReach(stranger, file)]).toEqual([false, false]);
    const { uid, gid } = await stat(file);
    expect(await canEnter({ name: 'owner', uid, gid }, outer)).toBe(true);
    await chmod(outer, 0o710);
    expect(await canReach({ name: 'neighbour', uid: 4242, gid }, file)).toBe(true);
    expect(await canReach(stranger, join(inner, 'nothing'))).toBe(false);
  });
});

describe('the programs of the server', () => {
  it('run from a copy, whose links are repaired and which anybody may enter', async () => {
    const installed = await installedBinaries();
    const spare = await newDirectory(0o755);
    const copy = await copyOut(installed.root, spare);
    expect(copy.postgres.startsWith(spare)).toBe(true);
    const { code, output } = await run(copy.postgres, ['--version'], isRoot ? nobody() : null);
    expect([code, output]).toEqual([0, expect.stringMatching(/^postgres \(PostgreSQL\) \d+/)]);
    expect(await canReach({ name: 'stranger', uid: 4242, gid: 4242 }, copy.initdb)).toBe(true);
    // The second time the copy is there.
    expect(await copyOut(installed.root, spare)).toEqual(copy);
    await rm(spare, { recursive: true });
  });

  it('get back the links that an installation without scripts leaves out', async () => {
    const root = await newDirectory(0o755);
    await mkdir(join(root, 'native', 'lib'), { recursive: true });
    await writeFile(join(root, 'native', 'lib', 'libthing.so.1.2'), 'thing');
    const links = [{ source: 'native/lib/libthing.so.1.2', target: 'native/lib/libthing.so.1' }];
    await writeFile(join(root, 'native', 'pg-symlinks.json'), JSON.stringify(links));
    const link = join(root, 'native', 'lib', 'libthing.so.1');
    expect(await repairLinks(root)).toBe(true);
    expect(await readlink(link)).toBe('libthing.so.1.2');
    expect(await readFile(link, 'utf8')).toBe('thing');
    const before = await lstat(link);
    expect(await repairLinks(root)).toBe(true);
    expect((await lstat(link)).ino).toBe(before.ino);
  });

  it('are not to be used where a link is missing and can’t be made', async () => {
    const root = await newDirectory(0o755);
    await mkdir(join(root, 'native'));
    const links = [{ source: 'native/lib/a.1', target: 'native/lib/a' }];
    await writeFile(join(root, 'native', 'pg-symlinks.json'), JSON.stringify(links));
    expect(await repairLinks(root)).toBe(false);
  });
});
