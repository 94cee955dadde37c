import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { writeBackup } from '#persistence';
import type { Log } from '../platform/log.js';

export interface BackupPlan {
  readonly directory: string;
  readonly everyHours: number;
  /** How many are kept, the newest ones. */
  readonly keep: number;
}

const HOUR_MS = 60 * 60 * 1_000;
/** A start has other things to do first. */
const SOONEST_MS = 10 * 60 * 1_000;
const NAME = /^sectorline-(\d{4}-\d\d-\d\dT\d\d)-(\d\d)-(\d\dZ)\.backup$/;

/** The name of the backup of a moment; sorted by name they are sorted by time. */
export function backupName(at: Date): string {
  return `sectorline-${at.toISOString().slice(0, 19).replaceAll(':', '-')}Z.backup`;
}

/** The moment in the name of a backup; null: the file is none of ours. */
export function backupTime(name: string): Date | null {
  const [, hour, minutes, seconds] = NAME.exec(name) ?? [];
  const at = new Date(`${hour}:${minutes}:${seconds}`);
  return Number.isNaN(at.getTime()) ? null : at;
}

/** Milliseconds until the next backup is due, seen from `now`. */
export function dueIn(now: Date, names: readonly string[], everyHours: number): number {
  const times = names.map((name) => backupTime(name)?.getTime() ?? 0);
  return Math.max(SOONEST_MS, Math.max(0, ...times) + everyHours * HOUR_MS - now.getTime());
}

/** Those that are too many, oldest first; files of others are never among them. */
export function tooMany(names: readonly string[], keep: number): string[] {
  const ours = names.filter((name) => backupTime(name) !== null).sort();
  return ours.slice(0, Math.max(0, ours.length - keep));
}

/** Writes a backup every so often while the server runs. One that fails is told, and tried again at the next time. */
export class Backups {
  private timer: NodeJS.Timeout | null = null;
  private stopped = false;

  constructor(
    private readonly url: string,
    private readonly plan: BackupPlan,
    private readonly log: Log,
  ) {}

  async begin(): Promise<void> {
    if (this.plan.everyHours === 0) return;
    const wait = dueIn(new Date(), await namesIn(this.plan.directory), this.plan.everyHours);
    if (this.stopped) return;
    this.timer = setTimeout(() => void this.write().then(() => this.begin()), wait);
    this.timer.unref();
  }

  /** What is being written is given up; the last whole one stays. */
  stop(): void {
    this.stopped = true;
    if (this.timer) clearTimeout(this.timer);
  }

  private async write(): Promise<void> {
    const { directory, keep } = this.plan;
    const at = new Date();
    try {
      const { rows } = await writeBackup(this.url, join(directory, backupName(at)), at);
      for (const name of tooMany(await namesIn(directory), keep)) await rm(join(directory, name));
      this.log.write('info', 'backup written', { rows });
    } catch (error) {
      if (!this.stopped) this.log.failure('no backup could be written', error);
    }
  }
}

/** None when the folder is not there yet. */
async function namesIn(directory: string): Promise<string[]> {
  try {
    return await readdir(directory);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}
