import { chmod, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { signingKey } from './secret.js';

describe('The secret', () => {
  let directory: string;
  beforeEach(async () => {
    directory = await mkdtemp(join(tmpdir(), 'secret-'));
  });
  afterEach(() => rm(directory, { recursive: true }));

  it('is made once, long, and for its owner’s eyes only', async () => {
    const made = await Promise.all([1, 2, 3].map(() => signingKey(undefined, directory)));
    expect(new Set(made.map(String)).size).toBe(1);
    expect(made[0]?.length).toBeGreaterThanOrEqual(32);
    expect((await stat(join(directory, 'secret'))).mode & 0o777).toBe(0o600);
  });

  it('differs from installation to installation', async () => {
    const other = await mkdtemp(join(tmpdir(), 'secret-'));
    expect(await signingKey(undefined, directory)).not.toEqual(await signingKey(undefined, other));
    await rm(other, { recursive: true });
  });

  it('is closed again when somebody opened the file', async () => {
    await signingKey(undefined, directory);
    await chmod(join(directory, 'secret'), 0o644);
    await signingKey(undefined, directory);
    expect((await stat(join(directory, 'secret'))).mode & 0o777).toBe(0o600);
  });

  // RFC 7518 section 3.2: a key for HS256 has at least 256 bits.
  it('given from outside has at least 32 bytes', async () => {
    await expect(signingKey('short', directory)).rejects.toThrow('SECTORLINE_SECRET');
    expect(await signingKey('x'.repeat(32), directory)).toHaveLength(32);
  });

  it('that is damaged is not signed with', async () => {
    await writeFile(join(directory, 'secret'), 'x\n');
    await expect(signingKey(undefined, directory)).rejects.toThrow('damaged');
    expect(await readFile(join(directory, 'secret'), 'utf8')).toBe('x\n');
  });
});
