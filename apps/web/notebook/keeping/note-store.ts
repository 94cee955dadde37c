import { computed, signal, type ReadonlySignal } from '@preact/signals';
import type { IDBPDatabase } from 'idb';
import { Outbox, SAFELY } from '../../offline/outbox.js';
import type { SessionPlace } from '../../offline/session.js';
import { NOTHING_KEPT, type KeptNotes, type Writing } from './database.js';

/**
 * What this device keeps. It is written to the disk before it is called saved, and sent after that; nothing is let go
 * of before the server has answered for it.
 */
export class NoteStore {
  readonly kept = signal<KeptNotes>(NOTHING_KEPT);
  readonly outbox = signal<readonly Writing[]>([]);
  readonly waiting: ReadonlySignal<readonly Writing[]>;
  readonly returned: ReadonlySignal<readonly Writing[]>;
  /** Called after something was put into the outbox. */
  onWritten: () => void = () => undefined;
  private readonly waitingRoom: Outbox<Writing>;

  constructor(private readonly database: IDBPDatabase) {
    this.waitingRoom = new Outbox(database);
    this.waiting = computed(() => this.outbox.value.filter(({ state }) => state === 'waiting'));
    this.returned = computed(() => this.outbox.value.filter(({ state }) => state === 'refused'));
  }

  /** Also when another page of this device has changed it. */
  async read(): Promise<void> {
    const kept = (await this.database.get('kept', 'all')) as Partial<KeptNotes> | undefined;
    this.kept.value = { ...NOTHING_KEPT, ...kept };
    this.outbox.value = await this.waitingRoom.all();
  }

  /** The sign-in lies beside the rest, written just as safely: browsers put off what goes into their small store. */
  async sessionPlace(): Promise<SessionPlace> {
    const kept = ((await this.database.get('kept', 'session')) as string | undefined) ?? null;
    const keep = (text: string) => void this.put('session', text);
    return { kept, keep, isKnownOffline: true };
  }

  private async put(key: 'all' | 'session', value: unknown): Promise<void> {
    const transaction = this.database.transaction('kept', 'readwrite', SAFELY);
    await transaction.store.put(value, key);
    await transaction.done;
  }

  async keep(change: Partial<KeptNotes>): Promise<void> {
    const kept = { ...this.kept.value, ...change };
    await this.put('all', kept);
    this.kept.value = kept;
  }

  /** Rejects when this device cannot write. */
  async write(writings: readonly Omit<Writing, 'state' | 'refusal'>[]): Promise<void> {
    await this.waitingRoom.add(writings.map((one) => ({ ...one, state: 'waiting', refusal: null })));
    this.outbox.value = await this.waitingRoom.all();
    this.onWritten();
  }

  async change(entryId: string, change: Partial<Writing>): Promise<void> {
    await this.waitingRoom.change(entryId, change);
    this.outbox.value = await this.waitingRoom.all();
  }

  async drop(entryId: string): Promise<void> {
    await this.waitingRoom.drop(entryId);
    this.outbox.value = await this.waitingRoom.all();
  }

  /** Nothing of anybody's stays on a device that somebody signs out of. */
  async forget(): Promise<void> {
    const transaction = this.database.transaction(['kept', 'outbox'], 'readwrite', SAFELY);
    await transaction.objectStore('kept').clear();
    await transaction.objectStore('outbox').clear();
    await transaction.done;
    await this.read();
  }
}
