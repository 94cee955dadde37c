import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';

/** One file of the front end, ready to be sent. */
export interface WebFile {
  readonly type: string;
  readonly plain: Buffer;
  /** Null: no smaller. */
  readonly zipped: Buffer | null;
  readonly etag: string;
  /** Named by its content: under its address there will never be anything else. */
  readonly isImmutable: boolean;
}

/** By address, such as `/desk`. */
export type WebFiles = ReadonlyMap<string, WebFile>;

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
};

/** Files whose name holds their hash lie here. */
const IMMUTABLE = '/web/';

const compress = promisify(gzip);

/**
 * Reads a built front end whole: a few hundred kilobytes, sent from memory, so that no address can ever lead to another
 * file. Pages are addressed without their ending. Empty when nothing was built there.
 */
export async function readWebFiles(folder: string): Promise<WebFiles> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const files = new Map<string, WebFile>();
  for (const entry of entries) {
    const type = TYPES[extname(entry.name)];
    if (!entry.isFile() || type === undefined) continue;
    const path = join(entry.parentPath, entry.name);
    const address = path
      .slice(folder.length)
      .replaceAll('\\', '/')
      .replace(/\.html$/, '');
    files.set(address, await webFile(address, type, await readFile(path)));
  }
  return files;
}

async function webFile(address: string, type: string, plain: Buffer): Promise<WebFile> {
  const zipped = await compress(plain, { level: 9 });
  return {
    type,
    plain,
    zipped: zipped.length < plain.length ? zipped : null,
    etag: `"${createHash('sha256').update(plain).digest('base64url').slice(0, 27)}"`,
    isImmutable: address.startsWith(IMMUTABLE),
  };
}
