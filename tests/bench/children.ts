import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { text } from 'node:stream/consumers';
import type { CrowdOrder, CrowdReport } from './crowd.js';
import type { Load, LoadResult } from './load.js';

const SOURCE = ['--conditions=source', '--import', '@swc-node/register/esm-register'];

function start(
  script: string,
  environment: Readonly<Record<string, string>>,
  ...parameters: readonly string[]
): ChildProcess {
  return spawn(process.execPath, [...SOURCE, join(import.meta.dirname, script), ...parameters], {
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
export async function startFloor(databaseUrl: string, script = 'floor.ts'): Promise<Floor> {
  const child = start(script, { DATABASE_URL: databaseUrl });
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

/** Subscribers in a process of their own. */
export interface Crowd {
  /** Says when each version was published, waits until all have the newest, and ends the crowd. */
  finish(newest: number, at: Readonly<Record<string, number>>): Promise<CrowdReport>;
}

/** Ends when everybody is connected and has been told something. */
export async function gather(order: CrowdOrder): Promise<Crowd> {
  const child = start('crowd.ts', {}, JSON.stringify(order));
  const lines = createInterface({ input: child.stdout! });
  const [said] = (await Promise.race([once(lines, 'line'), once(child, 'exit')])) as [unknown];
  if (said !== 'ready') throw new Error('The crowd did not gather.');
  return {
    finish: async (newest, at) => {
      child.stdin!.write(`${JSON.stringify({ newest, at })}\n`);
      const [report] = (await once(lines, 'line')) as [string];
      return JSON.parse(report) as CrowdReport;
    },
  };
}
