import type { IDBPDatabase } from 'idb';
import { Outbox, SAFELY } from '../../offline/outbox.js';
import type { NumberedItem } from '../competition/fold.js';
import type { DeskDatabase, KeptCompetition, Settings, SignIn, WaitingEntry } from './database.js';

const FIRST_SETTINGS: Settings = {
  vibrates: false,
  sounds: false,
  language: null,
  mode: 'all',
  deviceId: null,
  group: null,
  open: null,
};

/** Everything that the desk keeps, as it found it. */
export interface Kept {
  readonly signIn: SignIn | null;
  readonly settings: Settings;
  readonly competitions: readonly KeptCompetition[];
  readonly outbox: readonly WaitingEntry[];
}

/** Reads and writes what this device keeps. Every promise is kept when the transaction is complete. */
export class Keeper {
  private readonly outbox: Outbox<WaitingEntry>;

  constructor(private readonly database: DeskDatabase) {
    this.outbox = new Outbox(database as unknown as IDBPDatabase);
  }

  async readAll(): Promise<Kept> {
    const { database } = this;
    const [signIn, settings, competitions, outbox] = await Promise.all([
      database.get('signIn', 'current'),
      database.get('settings', 'current'),
      database.getAll('competitions'),
      this.outbox.all(),
    ]);
    return {
      signIn: signIn ?? null,
      settings: { ...FIRST_SETTINGS, ...settings },
      competitions,
      outbox,
    };
  }

  async keepSignIn(signIn: SignIn): Promise<void> {
    await this.database.put('signIn', signIn, 'current');
  }

  async keepSettings(settings: Settings): Promise<void> {
    await this.database.put('settings', settings, 'current');
  }

  keepEntries(entries: readonly WaitingEntry[]): Promise<void> {
    return this.outbox.add(entries);
  }

  changeEntry(entryId: string, change: Partial<WaitingEntry>): Promise<void> {
    return this.outbox.change(entryId, change);
  }

  dropEntry(entryId: string): Promise<void> {
    return this.outbox.drop(entryId);
  }

  /**
   * Keeps what the server has, and lets go of what it is known to have. Both in one transaction: an entry is always in
   * at least one of the two.
   */
  async keepCompetition(competition: KeptCompetition): Promise<void> {
    const transaction = this.database.transaction(['competitions', 'outbox'], 'readwrite', SAFELY);
    const outbox = transaction.objectStore('outbox');
    const entries = new Set(competition.items.map(({ entry }) => entry.id));
    for (let cursor = await outbox.openCursor(); cursor; cursor = await cursor.continue()) {
      if (entries.has(cursor.value.entryId)) await cursor.delete();
    }
    await transaction.objectStore('competitions').put(competition);
    await transaction.done;
  }
}

/** The journal with further lines, each once and in its place. */
export function withItems(
  items: readonly NumberedItem[],
  more: readonly NumberedItem[],
): readonly NumberedItem[] {
  const last = items.at(-1)?.sequence ?? 0;
  return [...items, ...more.filter(({ sequence }) => sequence > last)];
}
