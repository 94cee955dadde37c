import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { EmbeddedOptions } from '#persistence';

/** What `embedded-process.ts` says: where the server is, or why there is none. */
export interface Answer {
  readonly url?: string;
  readonly adopted?: boolean;
  readonly fault?: string;
  readonly message?: string;
}

export interface OtherProcess {
  readonly answer: Answer;
  /** With everything that it started in its group, as a terminal would. */
  signal(signal: NodeJS.Signals): Promise<void>;
  /** Lets it leave the server and end. */
  end(): Promise<void>;
}

const SCRIPT = join(import.meta.dirname, 'embedded-process.ts');

export async function otherProcess(options: EmbeddedOptions, user?: number): Promise<OtherProcess> {
  const parameters = [
    '--conditions=source',
    '--import',
    '@swc-node/register/esm-register',
    SCRIPT,
    JSON.stringify(options),
    ...(user === undefined ? [] : [String(user)]),
  ];
  const child: ChildProcess = spawn(process.execPath, parameters, {
    detached: true,
    stdio: ['pipe', 'pipe', 'inherit'],
    env: { ...process.env, NODE_OPTIONS: '' },
  });
  const ended = once(child, 'exit');
  const lines = createInterface({ input: child.stdout! });
  const [line] = (await Promise.race([once(lines, 'line'), ended.then(() => ['{}'])])) as [string];
  return {
    answer: JSON.parse(line) as Answer,
    async signal(signal) {
      process.kill(-child.pid!, signal);
      await ended;
    },
    async end() {
      child.stdin!.end();
      await ended;
    },
  };
}
