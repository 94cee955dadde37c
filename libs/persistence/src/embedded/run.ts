import { spawn, type SpawnOptions } from 'node:child_process';
import type { Account } from './account.js';

/** How a program of the server is started: as its account, without our own settings for PostgreSQL's clients. */
export function asServer(account: Account | null): SpawnOptions {
  const environment = Object.entries(process.env).filter(([name]) => !name.startsWith('PG'));
  return {
    // Where we are may be closed to the account; programs look round for where they are.
    cwd: process.platform === 'win32' ? undefined : '/',
    env: { ...Object.fromEntries(environment), LC_ALL: 'C' },
    windowsHide: true,
    ...(account === null ? {} : { uid: account.uid, gid: account.gid }),
  };
}

export interface Finished {
  readonly code: number | null;
  /** What it wrote, both streams together. */
  readonly output: string;
}

/** Runs a program to its end. Rejects when it can't be started. */
export async function run(
  program: string,
  parameters: readonly string[],
  account: Account | null,
): Promise<Finished> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, parameters, { ...asServer(account), stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    const collect = (chunk: Buffer): void => {
      output += chunk.toString();
    };
    child.stdout?.on('data', collect);
    child.stderr?.on('data', collect);
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, output }));
  });
}
