import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';
import type { Readable } from 'node:stream';

/** The bytes of a file, or why there are none. */
export type Input = { readonly bytes: Uint8Array } | { readonly unreadable: string };

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read by this user',
};

/** Where the person stands who typed the names: npm runs a script in the top folder of the repository. */
function standingIn(env: NodeJS.ProcessEnv): string {
  return env['npm_lifecycle_event'] === 'recount' && env['INIT_CWD'] ? env['INIT_CWD'] : process.cwd();
}

/** Stops after `bytesMax`, so that neither a huge file nor an endless one fills the memory. */
async function readAtMost(stream: Readable, bytesMax: number): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of stream as AsyncIterable<Buffer>) {
    chunks.push(chunk);
    bytes += chunk.length;
    if (bytes >= bytesMax) break;
  }
  return Buffer.concat(chunks);
}

/**
 * Reads a file, or standard input for `-`: at most `bytesMax` bytes and what came with the last of them, which is enough
 * to see that there are too many.
 */
export async function readInput(name: string, bytesMax: number): Promise<Input> {
  try {
    const stream =
      name === '-'
        ? process.stdin
        : createReadStream(resolve(standingIn(process.env), name), { end: bytesMax - 1 });
    return { bytes: await readAtMost(stream, bytesMax) };
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const reason = (code !== undefined && REASONS[code]) || message;
    return { unreadable: `${name === '-' ? 'Standard input' : name} could not be read: ${reason}.` };
  }
}
