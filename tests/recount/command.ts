import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..', '..');

export interface Answer {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

interface Circumstances {
  /** Standard input; without it there is none. */
  readonly input?: string | Uint8Array;
  /** Where the person stands who types the command. */
  readonly folder?: string;
  /** Closes standard output after its first piece, as `head` does. */
  readonly hangUp?: boolean;
}

/** Runs the command as the README tells people to: `npm run --silent recount -- …`. */
export function recountCommand(words: readonly string[], circumstances: Circumstances = {}): Promise<Answer> {
  const { input, folder = ROOT, hangUp = false } = circumstances;
  return new Promise((done, failed) => {
    const args = ['--prefix', ROOT, 'run', '--silent', 'recount', '--', ...words];
    const child = spawn('npm', args, { cwd: folder, env: { ...process.env, INIT_CWD: folder } });
    let [out, err] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      if (hangUp) child.stdout.destroy();
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
    child.stdin.on('error', () => {
      // The command may end without having read it all.
    });
    child.on('error', failed).on('close', (status) => done({ status, out, err }));
    child.stdin.end(input ?? '');
  });
}

/** The documents of an answer to `--json`: one a line, and nothing else. */
export function documentsIn(answer: Answer): Record<string, unknown>[] {
  if (answer.out !== '' && !answer.out.endsWith('\n')) throw new Error('The last line does not end.');
  const lines = answer.out.split('\n').slice(0, -1);
  return lines.map((line) => JSON.parse(line) as Record<string, unknown>);
}

/** A folder for the files of one test, gone after it. */
export function scratchFolder(): {
  path: string;
  write: (name: string, content: unknown) => string;
  remove: () => void;
} {
  const path = mkdtempSync(join(tmpdir(), 'sectorline-recount-'));
  const write = (name: string, content: unknown): string => {
    const isRaw = typeof content === 'string' || content instanceof Uint8Array;
    writeFileSync(join(path, name), isRaw ? content : JSON.stringify(content));
    return join(path, name);
  };
  return { path, write, remove: () => rmSync(path, { recursive: true, force: true }) };
}
