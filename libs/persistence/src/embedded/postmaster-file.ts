import { readFile, readlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * What a server writes of itself into `postmaster.pid` in its data directory, line by line (PostgreSQL
 * documentation, "Database File Layout"): process, directory, start, port, socket directory, address, shared memory, status.
 */
export interface PostmasterFile {
  readonly pid: number;
  readonly startedAtS: number;
  readonly port: number;
  /** False: still starting, or already stopping. */
  readonly isReady: boolean;
}

const FILE = 'postmaster.pid';

export async function readPostmasterFile(dataDir: string): Promise<PostmasterFile | null> {
  const text = await readFile(join(dataDir, FILE), 'utf8').catch(() => '');
  const lines = text.split('\n').map((line) => line.trim());
  const [pid = '', , started = '', port = ''] = lines;
  if (![pid, started, port].every((number) => /^-?\d+$/.test(number))) return null;
  return {
    pid: Math.abs(Number(pid)),
    startedAtS: Number(started),
    port: Number(port),
    isReady: lines[7] === 'ready',
  };
}

/**
 * Whether the file names a process that certainly is not its server: after a crash the number may have gone to
 * another program, or to one that has ended and waits to be collected. Only Linux tells; elsewhere false.
 */
export async function isStale(dataDir: string, { pid }: PostmasterFile): Promise<boolean> {
  const status = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => null);
  if (status === null) return false;
  const state = /\)\s+(\S)/.exec(status)?.[1];
  if (state === 'Z' || state === 'X') return true;
  const program = await readlink(`/proc/${pid}/exe`).catch(() => null);
  const parameters = await readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => null);
  if (parameters === null || parameters === '') return false;
  const isServer =
    /postgres$/.test(program ?? parameters.split('\0')[0] ?? '') || /^postgres\b/.test(parameters);
  return !(isServer && parameters.split('\0').includes(dataDir));
}

/**
 * Takes the lock from a process that never had it, by naming ourselves: a server that we start takes a file with its
 * parent's number for a leftover, and still refuses when memory of an earlier server is in use. Removing the file
 * would take that second protection away.
 */
export async function takeStaleLock(dataDir: string): Promise<void> {
  const path = join(dataDir, FILE);
  const text = await readFile(path, 'utf8').catch(() => null);
  if (text === null) return;
  await writeFile(path, text.replace(/^-?\d+/, String(process.pid)));
}
