/*
 * A backup is text, packed with gzip. Its first line is the head as JSON. Then each table has a line `T name` and a
 * line `R row` for each row, a JSON object by column; tables come after those that their rows name. The last line is
 * `E size`, so that half a file is known to be half a file.
 */

export const BACKUP_FORMAT = 'sectorline-backup/1';

export interface BackupHead {
  readonly format: typeof BACKUP_FORMAT;
  /** RFC 3339. */
  readonly takenAt: string;
  /** Names of the migrations that had run, in their order. */
  readonly migrations: readonly string[];
}

export interface BackupSize {
  readonly tables: number;
  readonly rows: number;
}

/** The file is no backup, is not whole, or cannot be put where it was asked for. */
export class BackupUnusable extends Error {
  override readonly name = 'BackupUnusable';
}

/** Reads the first line. Throws `BackupUnusable`. */
export function readHead(line: string): BackupHead {
  let head: Partial<BackupHead>;
  try {
    head = JSON.parse(line) as Partial<BackupHead>;
  } catch {
    throw new BackupUnusable('The file does not begin like a backup.');
  }
  if (head.format !== BACKUP_FORMAT)
    throw new BackupUnusable(`The file is not a ${BACKUP_FORMAT}: it says ${String(head.format)}.`);
  return head as BackupHead;
}
