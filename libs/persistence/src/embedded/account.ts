import { lstat, readFile, realpath, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { EmbeddedError } from './embedded-error.js';

/** The operating system's account under which the server runs when we are root, which PostgreSQL refuses to be. */
export interface Account {
  readonly name: string;
  readonly uid: number;
  readonly gid: number;
}

/** Nobody has to be created: one of these is there on every system that has a root. */
const CANDIDATES = ['postgres', '_postgres', 'nobody'];

/**
 * `null`: the server runs as ourselves. Data that is there already decides: its owner goes on owning it. Otherwise
 * an account that the system has anyway; PostgreSQL demands one with a name.
 */
export async function serverAccount(dataDir: string): Promise<Account | null> {
  if (process.getuid?.() !== 0) return null;
  const accounts = await knownAccounts();
  const owner = await ownerOf(dataDir);
  const account =
    owner === null || owner === 0
      ? CANDIDATES.map((name) => accounts.find((known) => known.name === name)).find(
          (known) => known !== undefined,
        )
      : accounts.find((known) => known.uid === owner);
  if (account !== undefined) return account;
  throw new EmbeddedError(
    'NO_ACCOUNT',
    `The database must not run as root, and there is no account ${owner ? `with the number ${owner}` : CANDIDATES.join(' or ')}.`,
    'Start as a normal user.',
  );
}

async function knownAccounts(): Promise<Account[]> {
  const passwd = await readFile('/etc/passwd', 'utf8').catch(() => '');
  return passwd.split('\n').flatMap((line) => {
    const [name = '', , uid, gid] = line.split(':');
    return name.startsWith('#') || gid === undefined ? [] : [{ name, uid: Number(uid), gid: Number(gid) }];
  });
}

async function ownerOf(path: string): Promise<number | null> {
  return lstat(path).then(
    ({ uid }) => uid,
    () => null,
  );
}

/** Whether the account may read `path` and enter every directory above it, by the mode bits. */
export async function canReach(account: Account, path: string): Promise<boolean> {
  try {
    const target = await realpath(path);
    return (await allows(account, target, READ)) && (await canEnter(account, dirname(target)));
  } catch {
    return false;
  }
}

/** Whether the account may enter `directory` and every one above it, by the mode bits. */
export async function canEnter(account: Account, directory: string): Promise<boolean> {
  try {
    for (let entered = await realpath(directory); ; entered = dirname(entered)) {
      if (!(await allows(account, entered, ENTER))) return false;
      if (entered === dirname(entered)) return true;
    }
  } catch {
    return false;
  }
}

const READ = 0o4;
const ENTER = 0o1;

async function allows(account: Account, path: string, right: number): Promise<boolean> {
  const { uid, gid, mode } = await stat(path);
  if (uid === account.uid) return (mode & (right << 6)) !== 0;
  if (gid === account.gid) return (mode & (right << 3)) !== 0;
  return (mode & right) !== 0;
}
