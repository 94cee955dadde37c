import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { createOutbox, type Entered, type Refusal } from '../../offline/outbox.js';
import type { NumberedItem } from '../competition/fold.js';
import type { CompetitionHead } from '../competition/head.js';
import type { KeptImplements } from '../competition/implements.js';
import type { Body } from '../competition/request.js';

/** Who works with this device. */
export interface SignIn {
  readonly token: string;
  /** What the token is called. */
  readonly label: string;
  /** As journals name its holder. */
  readonly holder: string;
  readonly grants: readonly {
    readonly role: string;
    readonly on: string | null;
    readonly isWindsOnly?: boolean;
  }[];
}

/** One competition as it was last read from the server. */
export interface KeptCompetition {
  readonly id: string;
  readonly head: CompetitionHead;
  readonly items: readonly NumberedItem[];
  /** Where to read on in the journal. */
  readonly cursor: string | null;
  readonly version: number;
  readonly capacity: 'official' | 'referee' | 'director';
  /** As the register was last read; absent: not yet, or it is no throw. */
  readonly implements?: KeptImplements;
}

/** An entry of this device that the server has not answered yet, or that it would not take. */
export interface WaitingEntry extends Entered {
  readonly competitionId: string;
  readonly body: Body;
  /** The version of the competition that it was decided on. */
  readonly basedOn: number;
  /** `refused`: the server answered that it can never be right; `conflict`: somebody else changed it since. */
  readonly state: 'waiting' | 'refused' | 'conflict';
  readonly refusal: Refusal | null;
}

export interface KeptGroup {
  readonly id: string;
  readonly title: string;
  /** In the sequence in which they take turns. */
  readonly competitionIds: readonly string[];
  /** Everybody in one order, by the keys of the journals. */
  readonly startOrder: readonly string[];
}

export interface Settings {
  readonly vibrates: boolean;
  readonly sounds: boolean;
  readonly language: string | null;
  readonly mode: 'all' | 'wind';
  /** By which this device is known where it came in by a link. */
  readonly deviceId: string | null;
  /** Several competitions that are called in one order; null: the open one stands alone. */
  readonly group: KeptGroup | null;
  /** The competition that was open last. */
  readonly open: string | null;
}

interface DeskSchema extends DBSchema {
  signIn: { key: 'current'; value: SignIn };
  settings: { key: 'current'; value: Settings };
  competitions: { key: string; value: KeptCompetition };
  /** In the order of entering. */
  outbox: { key: number; value: WaitingEntry; indexes: { entryId: string } };
}

export type DeskDatabase = IDBPDatabase<DeskSchema>;

const VERSION = 1;

/** Opens what this device keeps. An older page that still has it open gives way. */
export function openDeskDatabase(): Promise<DeskDatabase> {
  return openDB<DeskSchema>('sectorline-desk', VERSION, {
    upgrade(database) {
      database.createObjectStore('signIn');
      database.createObjectStore('settings');
      database.createObjectStore('competitions', { keyPath: 'id' });
      createOutbox(database as unknown as IDBPDatabase);
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });
}
