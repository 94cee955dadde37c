import type { IDBPDatabase } from 'idb';

/** What every page keeps of something that was entered and not answered yet. */
export interface Entered {
  /** Made by the device: sending again is safe. */
  readonly entryId: string;
  readonly madeAtMs: number;
}

/** Why the server would not take something. */
export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly rule: string | null;
  readonly remedy: string | null;
}

/** Written through to the disk before it is called saved: a device may lose its power at any moment. */
export const SAFELY = { durability: 'strict' } as const;

/** Makes the store of an outbox, in the upgrade of a database. */
export function createOutbox(database: Pick<IDBPDatabase, 'createObjectStore'>): void {
  const outbox = database.createObjectStore('outbox', { autoIncrement: true });
  outbox.createIndex('entryId', 'entryId', { unique: true });
}

/** What waits on this device, in the order of entering, each once. Every promise is kept when the transaction is complete. */
export class Outbox<E extends Entered> {
  constructor(private readonly database: IDBPDatabase) {}

  all(): Promise<E[]> {
    return this.database.getAll('outbox') as Promise<E[]>;
  }

  /** Puts entries at the end of what waits; those that wait already stay where they are. */
  async add(entries: readonly E[]): Promise<void> {
    const transaction = this.database.transaction('outbox', 'readwrite', SAFELY);
    const known = transaction.store.index('entryId');
    for (const entry of entries) {
      if ((await known.getKey(entry.entryId)) === undefined) await transaction.store.add(entry);
    }
    await transaction.done;
  }

  /** Says what became of an entry that waited. */
  async change(entryId: string, change: Partial<E>): Promise<void> {
    const transaction = this.database.transaction('outbox', 'readwrite', SAFELY);
    const key = await transaction.store.index('entryId').getKey(entryId);
    const entry = key === undefined ? undefined : ((await transaction.store.get(key)) as E | undefined);
    if (entry) await transaction.store.put({ ...entry, ...change }, key);
    await transaction.done;
  }

  async drop(entryId: string): Promise<void> {
    const transaction = this.database.transaction('outbox', 'readwrite', SAFELY);
    const key = await transaction.store.index('entryId').getKey(entryId);
    if (key !== undefined) await transaction.store.delete(key);
    await transaction.done;
  }
}
