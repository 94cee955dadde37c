import { randomBytes } from 'node:crypto';
import { chown, mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Binaries } from './binaries.js';
import { EmbeddedError } from './embedded-error.js';
import { exists } from './exists.js';
import type { Place } from './place.js';
import { run } from './run.js';

/** The server's only login that is made here: its owner. */
export const OWNER = 'sectorline';

/** Lies with the data that it opens, so that neither is ever without the other. */
const PASSWORD_FILE = 'sectorline-password';

/**
 * Makes the database's files if there are none. Only a finished directory gets the final name: one that was
 * interrupted is not mistaken for data, and of two starters one wins.
 */
export async function ensureCluster(place: Place, binaries: Binaries): Promise<void> {
  if (await exists(place.dataDir)) return checkVersion(place, binaries);
  const making = `${place.dataDir}.new-${process.pid}`;
  await rm(making, { recursive: true, force: true });
  try {
    await mkdir(making, { mode: 0o700 });
    await give(making, place);
    await initialise(making, place, binaries);
    await rename(making, place.dataDir);
  } catch (error) {
    if (!(await exists(place.dataDir))) throw error;
  } finally {
    await rm(making, { recursive: true, force: true });
  }
}

/** The owner's password. Other users of the machine can reach the port, so there has to be one. */
export async function readPassword(place: Place): Promise<string> {
  const file = join(place.dataDir, PASSWORD_FILE);
  try {
    return (await readFile(file, 'utf8')).trim();
  } catch (error) {
    throw new EmbeddedError('DATA_OF_OTHERS', `${file} can't be read.`, 'Start as the user who owns it.', {
      cause: error,
    });
  }
}

async function initialise(directory: string, place: Place, binaries: Binaries): Promise<void> {
  const password = randomBytes(24).toString('base64url');
  const passwordFile = `${directory}.password`;
  await writeSecret(passwordFile, password, place);
  try {
    const { code, output } = await run(
      binaries.initdb,
      initialisation(directory, passwordFile),
      place.account,
    );
    if (code !== 0) throw new Error(output);
    await writeSecret(join(directory, PASSWORD_FILE), password, place);
  } catch (error) {
    throw new EmbeddedError(
      'INIT_FAILED',
      `The embedded database could not be made in ${place.dataDir}: ${reasonIn(error)}`,
      'See that the disk has 100 MB left and is writable.',
      { cause: error },
    );
  } finally {
    await rm(passwordFile, { force: true });
  }
}

/** The built-in locale sorts by code point and is the same on every system and after every system update. */
function initialisation(directory: string, passwordFile: string): string[] {
  return [
    `--pgdata=${directory}`,
    `--username=${OWNER}`,
    `--pwfile=${passwordFile}`,
    '--auth=scram-sha-256',
    '--encoding=UTF8',
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
    '--locale=C',
    '--data-checksums',
  ];
}

async function writeSecret(path: string, secret: string, place: Place): Promise<void> {
  await rm(path, { force: true });
  const file = await open(path, 'wx', 0o600);
  try {
    await file.writeFile(`${secret}\n`);
    await file.sync();
  } finally {
    await file.close();
  }
  await give(path, place);
}

async function give(path: string, { account }: Place): Promise<void> {
  if (account !== null) await chown(path, account.uid, account.gid);
}

/** Files of another major version can't be read, and the server's own message is hidden in its log. */
async function checkVersion(place: Place, binaries: Binaries): Promise<void> {
  const made = (await readFile(join(place.dataDir, 'PG_VERSION'), 'utf8').catch(() => '')).trim();
  const { output } = await run(binaries.postgres, ['--version'], place.account).catch(
    notExecutable(binaries),
  );
  const installed = /(\d+)(?:\.\d+)?\s*$/.exec(output.trim())?.[1];
  if (made === '' || installed === undefined || made === installed) return;
  throw new EmbeddedError(
    'OTHER_VERSION',
    `${place.dataDir} was made by PostgreSQL ${made}, and this is PostgreSQL ${installed}.`,
    `Install the version of the program that made it, or move the directory away to begin with an empty database.`,
  );
}

export function notExecutable(binaries: Binaries): (cause: unknown) => never {
  return (cause) => {
    throw new EmbeddedError(
      'NOT_EXECUTABLE',
      `${binaries.postgres} can't be run on this system: ${reasonIn(cause)}`,
      'The programs need a system with the GNU C library, on a disk that allows programs.',
      { cause },
    );
  };
}

function reasonIn(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.trim().split('\n').slice(-3).join(' ');
}
