import { createHash } from 'node:crypto';
import { mkdir, readFile, realpath, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { canEnter, serverAccount, type Account } from './account.js';
import { EmbeddedError } from './embedded-error.js';
import { exists } from './exists.js';

/** Where the server lives, and as whom. */
export interface Place {
  readonly account: Account | null;
  /** Holds everything below; we may write here. */
  readonly base: string;
  readonly dataDir: string;
  readonly logFile: string;
}

/** In the home, the path of a base that lies elsewhere. */
const POINTER = 'postgres-lives-at';

/**
 * Kept by the system over restarts and clean-ups, unlike any temporary directory: what is in here is somebody's
 * competition.
 */
const SYSTEM_STATE = '/var/lib/sectorline';

/**
 * Finds the place that `home` keeps its database at. It is the home itself, unless we are root and the account of
 * the server may not enter there (a checkout in root's own home): then it is a directory of the system's, and the
 * home remembers which.
 */
export async function findPlace(home: string, systemState = SYSTEM_STATE): Promise<Place> {
  await makeHome(home);
  const remembered = await readPointer(home);
  if (remembered !== null) return placeAt(remembered, await serverAccount(join(remembered, 'postgres')));
  const account = await serverAccount(join(home, 'postgres'));
  if (account === null || (await canEnter(account, home))) return placeAt(home, account);
  if (await exists(join(home, 'postgres'))) {
    throw new EmbeddedError(
      'NO_PLACE',
      `The database in ${home} belongs to the account ${account.name}, which may not enter there.`,
      `Let it in (chmod o+x on the directories above), or start as the user to whom ${home} belongs.`,
    );
  }
  return placeAt(await moveOut(home, account, systemState), account);
}

function placeAt(base: string, account: Account | null): Place {
  return { account, base, dataDir: join(base, 'postgres'), logFile: join(base, 'postgres.log') };
}

/** Root's own home for us must let the server's account through, though not look around. */
async function makeHome(home: string): Promise<void> {
  try {
    await mkdir(home, { recursive: true, mode: process.getuid?.() === 0 ? 0o711 : 0o700 });
  } catch (error) {
    throw noPlace(home, error);
  }
}

async function readPointer(home: string): Promise<string | null> {
  const pointer = join(home, POINTER);
  const text = await readFile(pointer, 'utf8').catch(() => null);
  if (text === null) return null;
  const base = text.trim();
  if (await exists(base)) return base;
  throw new EmbeddedError(
    'DATA_GONE',
    `The database of ${home} was kept in ${base}, and that is not there any more.`,
    `Bring it back, or delete ${pointer} to begin with an empty database.`,
  );
}

async function moveOut(home: string, account: Account, systemState: string): Promise<string> {
  const key = createHash('sha256')
    .update(await realpath(home))
    .digest('hex')
    .slice(0, 16);
  const base = join(systemState, key);
  try {
    await mkdir(base, { recursive: true, mode: 0o711 });
    if (!(await canEnter(account, base))) throw new Error(`${account.name} may not enter ${base}`);
    await writeWhole(join(home, POINTER), `${base}\n`);
    return base;
  } catch (error) {
    throw noPlace(base, error);
  }
}

function noPlace(path: string, cause: unknown): EmbeddedError {
  return new EmbeddedError(
    'NO_PLACE',
    `There is no place for the database: ${path} can't be made or entered.`,
    'Start as a normal user from a directory of your own.',
    { cause },
  );
}

async function writeWhole(path: string, text: string): Promise<void> {
  await writeFile(`${path}.new`, text, { mode: 0o600 });
  await rename(`${path}.new`, path);
}
