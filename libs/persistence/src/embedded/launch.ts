import { spawn, type ChildProcess } from 'node:child_process';
import { open, rename, stat } from 'node:fs/promises';
import { createServer } from 'node:net';
import { setTimeout as delay } from 'node:timers/promises';
import { notExecutable } from './cluster.js';
import type { Binaries } from './binaries.js';
import type { Place } from './place.js';
import { readPostmasterFile, type PostmasterFile } from './postmaster-file.js';
import { asServer } from './run.js';

/**
 * `locked`: another server has the data (or seems to); `port taken`: somebody was quicker at the port; `failed`: it
 * said why in `reason`.
 */
export type Launch =
  | { readonly outcome: 'started'; readonly file: PostmasterFile }
  | { readonly outcome: 'locked' | 'port taken' }
  | { readonly outcome: 'failed'; readonly reason: string };

export interface LaunchOptions {
  /** `null`: any free one. */
  readonly port: number | null;
  /** Server settings beside ours, by name. */
  readonly settings: Readonly<Record<string, string>>;
}

/** Nothing acknowledged may be lost, and nobody from outside this machine may knock. */
const SETTINGS: Readonly<Record<string, string>> = {
  listen_addresses: '127.0.0.1',
  unix_socket_directories: '',
  fsync: 'on',
  synchronous_commit: 'on',
  full_page_writes: 'on',
  timezone: 'UTC',
  log_timezone: 'UTC',
  lc_messages: 'C',
  logging_collector: 'off',
};

/** Starts the server and waits until it has written its port, or has ended. */
export async function launch(place: Place, binaries: Binaries, options: LaunchOptions): Promise<Launch> {
  const port = options.port ?? (await freePort());
  await turnOver(place.logFile);
  const log = await open(place.logFile, 'a', 0o600);
  const from = (await log.stat()).size;
  try {
    const child = spawn(binaries.postgres, serverParameters(place, port, options.settings), {
      ...asServer(place.account),
      // A group of its own: Ctrl+C at the terminal is for us, who stop the server when our work is done.
      detached: true,
      stdio: ['ignore', log.fd, log.fd],
    });
    child.unref();
    const file = await readyFile(place, child).catch(notExecutable(binaries));
    return file === null ? judge(await readFrom(place.logFile, from)) : { outcome: 'started', file };
  } finally {
    await log.close();
  }
}

function serverParameters(place: Place, port: number, extra: Readonly<Record<string, string>>): string[] {
  const settings = Object.entries({ ...SETTINGS, ...extra });
  return [
    '-D',
    place.dataDir,
    '-p',
    String(port),
    ...settings.flatMap(([name, value]) => ['-c', `${name}=${value}`]),
  ];
}

/** The file of the server when it takes connections; `null` when it ends before that. */
async function readyFile(place: Place, child: ChildProcess): Promise<PostmasterFile | null> {
  const end: { error?: Error; exited?: true } = {};
  child.once('error', (error) => (end.error = error));
  child.once('exit', () => (end.exited = true));
  for (;;) {
    await delay(10);
    if (end.error !== undefined) throw end.error;
    if (end.exited === true) return null;
    const file = await readPostmasterFile(place.dataDir);
    if (file !== null && file.pid === child.pid && file.isReady) return file;
  }
}

function judge(log: string): Launch {
  if (/lock file "[^"]*" already exists|shared memory block .* is still in use/.test(log))
    return { outcome: 'locked' };
  if (/could not bind|could not create any TCP\/IP sockets/.test(log)) return { outcome: 'port taken' };
  const reason = log.trim().split('\n').slice(-4).join(' ');
  return { outcome: 'failed', reason: reason === '' ? 'it ended without a word' : reason };
}

const LOG_LIMIT_BYTES = 10_000_000;

/** One old log is kept, so that the server's words never fill the disk. */
async function turnOver(logFile: string): Promise<void> {
  const size = await stat(logFile).then(
    (status) => status.size,
    () => 0,
  );
  if (size > LOG_LIMIT_BYTES) await rename(logFile, `${logFile}.1`);
}

async function readFrom(path: string, from: number): Promise<string> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const { buffer } = await file.read(
      Buffer.alloc(Math.max(0, size - from)),
      0,
      Math.max(0, size - from),
      from,
    );
    return buffer.toString('utf8');
  } finally {
    await file.close();
  }
}

/** A port that is free now. The usual one is left to a server that the machine may have already. */
async function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        address !== null && typeof address === 'object'
          ? resolve(address.port)
          : reject(new Error('no port')),
      );
    });
  });
}
