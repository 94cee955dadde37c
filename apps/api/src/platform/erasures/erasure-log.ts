import { mkdir, open, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Pseudonym } from '#persistence';
import { readUuid } from '../scalars/uuid.js';

/** What was erased, by ids: the name is in no place any more, and not here. */
export interface Erasure {
  /** RFC 3339. */
  readonly at: string;
  readonly organisationId: string;
  readonly athleteId: string;
  readonly pseudonym: Pseudonym;
  /** Lines of start lists that had the name written by hand. */
  readonly competitorIds: readonly string[];
  readonly entrantIds: readonly string[];
}

/**
 * Erasures outside the database: a backup knows the names again, and whoever restores it must not bring them back. One
 * JSON object a line, only added to. Without a path nothing is kept.
 */
export class ErasureLog {
  constructor(private readonly path: string | null) {}

  /** Ends when the line is on the disk. */
  async append(erasure: Erasure): Promise<void> {
    if (this.path === null) return;
    await mkdir(dirname(this.path), { recursive: true });
    const file = await open(this.path, 'a', 0o600);
    try {
      await file.write(`${JSON.stringify(erasure)}\n`);
      await file.datasync();
    } finally {
      await file.close();
    }
  }

  /** Oldest first. Throws on a line that is none, except a last one that was not written to its end. */
  async read(): Promise<Erasure[]> {
    const text = this.path === null ? '' : await readFile(this.path, 'utf8').catch(emptyWhenAbsent);
    const lines = text.split('\n').slice(0, -1);
    return lines.map((line, at) => {
      const erasure = erasureIn(line);
      if (!erasure)
        throw new Error(`${this.path!}, line ${at + 1}, is not an erasure; put the file right first.`);
      return erasure;
    });
  }
}

function emptyWhenAbsent(error: NodeJS.ErrnoException): string {
  if (error.code === 'ENOENT') return '';
  throw error;
}

function erasureIn(line: string): Erasure | null {
  try {
    const read = JSON.parse(line) as Erasure;
    const ids = [read.organisationId, read.athleteId, ...read.competitorIds, ...read.entrantIds];
    const { givenName, familyName } = read.pseudonym;
    const isNamed = typeof givenName === 'string' && typeof familyName === 'string';
    return isNamed && ids.every((id) => readUuid(id) !== null) ? read : null;
  } catch {
    return null;
  }
}
