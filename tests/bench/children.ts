import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { text } from 'node:stream/consumers';
import type { Load, LoadResult } from './load.js';

const SOURCE = ['--conditions=source', '--import', '@swc-node/register/esm-register'];

function start(script: string, environment: Readonly<Record<string, string>>): ChildProcess {
  return spawn(process.execPath, [...SOURCE, join(import.meta.dirname, script)], {
    stdio: ['pipe', 'pipe', 'inherit'],
    env: { ...process.env, NODE_ENV: 'production', ...environment },
  });
}

/** Sends a load from a process of its own. Throws when any answer was not as it must be. */
export async function send(load: Load): Promise<LoadResult> {
  const child = start('load.ts', {});
  const ended = once(child, 'exit');
  child.stdin!.end(JSON.stringify(load));
  const answer = await text(child.stdout!);
  const [code, signal] = (await ended) as [number | null, string | null];
  if (code !== 0) throw new Error(`The load ended with ${code ?? signal} instead of a result.`);
  const result = JSON.parse(answer) as LoadResult;
  if (result.wrong !== null) throw new Error(`A wrong answer from ${load.url}: ${result.wrong}`);
  return result;
}

export interface Floor {
  readonly url: string;
  stop(): Promise<void>;
}

/** The bare server to measure against, in a process of its own. */
export async function startFloor(databaseUrl: string): Promise<Floor> {
  const child = start('floor.ts', { DATABASE_URL: databaseUrl });
  const lines = createInterface({ input: child.stdout! });
  const [url] = (await once(lines, 'line')) as [string];
  return {
    url,
    stop: async () => {
      const ended = once(child, 'exit');
      child.kill();
      await ended;
    },
  };
}
