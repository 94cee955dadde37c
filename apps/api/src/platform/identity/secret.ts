import { randomBytes } from 'node:crypto';
import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** HS256 wants a key of at least 256 bits (RFC 7518 section 3.2). */
const MINIMUM_BYTES = 32;

/**
 * The key that signs tokens: the one given, else the one kept in `<directory>/secret`, made on the first start and
 * readable by its owner alone. There is no default. Throws when the given secret is too short.
 */
export async function signingKey(given: string | undefined, directory: string): Promise<Uint8Array> {
  if (given !== undefined) {
    const key = Buffer.from(given, 'utf8');
    if (key.length < MINIMUM_BYTES) {
      throw new Error(
        `SECTORLINE_SECRET must be at least ${MINIMUM_BYTES} bytes; make one with: openssl rand -base64 48`,
      );
    }
    return key;
  }
  return keptKey(join(directory, 'secret'), directory);
}

async function keptKey(path: string, directory: string): Promise<Uint8Array> {
  await mkdir(directory, { recursive: true });
  try {
    // `wx`: of two processes that start at once one makes the secret and the other reads it.
    await writeFile(path, `${randomBytes(48).toString('base64')}\n`, { mode: 0o600, flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  await chmod(path, 0o600);
  const key = Buffer.from((await readFile(path, 'utf8')).trim(), 'utf8');
  if (key.length < MINIMUM_BYTES) throw new Error(`${path} is damaged; remove it to have a new secret made.`);
  return key;
}
