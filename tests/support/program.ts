import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';

/** What the program says once it answers; the first group is its address. */
export const READY = /answers at (http:\S+)\/graphql[\s\S]*Stop with/;

/** The program itself, as `npm start` runs it, on an embedded database of its own. */
export class Program {
  output = '';
  errors = '';

  private constructor(readonly process: ChildProcess) {
    process.stdout?.on('data', (chunk) => (this.output += String(chunk)));
    process.stderr?.on('data', (chunk) => (this.errors += String(chunk)));
  }

  static start(data: string, environment: Readonly<Record<string, string>> = {}): Program {
    const { DATABASE_URL: _, NODE_ENV: __, ...inherited } = process.env;
    const args = [
      '--conditions=source',
      '--import',
      '@swc-node/register/esm-register',
      'apps/api/src/main.ts',
    ];
    const env = { ...inherited, SECTORLINE_DATA: data, PORT: '0', ...environment };
    return new Program(spawn(process.execPath, args, { env }));
  }

  /** Waits until the output fits; gives what fitted. */
  async says(form: RegExp): Promise<RegExpExecArray> {
    for (;;) {
      const found = form.exec(this.output);
      if (found) return found;
      if (this.process.exitCode !== null || this.process.signalCode !== null)
        throw new Error(`It ended: ${this.errors}${this.output}`);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }

  async end(signal: NodeJS.Signals): Promise<number | null> {
    const lives = this.process.exitCode === null && this.process.signalCode === null;
    const ended = lives ? once(this.process, 'exit') : null;
    this.process.kill(signal);
    await ended;
    return this.process.exitCode;
  }
}
