import { openDB, type IDBPDatabase } from 'idb';
import { createOutbox, type Entered, type Refusal } from '../../offline/outbox.js';
import type { AthleteNotes, Vocabulary } from '../shapes.js';

/** Something that was written here and that the server has not answered yet, or would not take. */
export interface Writing extends Entered {
  readonly mutation: 'practiceSessionCreate' | 'throwsLog' | 'checklistSet';
  readonly input: Readonly<Record<string, unknown>>;
  /** What it is, for whoever has to look at it again. */
  readonly about: string;
  readonly state: 'waiting' | 'refused';
  readonly refusal: Refusal | null;
}

/** What an athlete throws and how, as it was chosen last. */
export interface Thrown {
  readonly event: string;
  readonly variant: string;
  readonly implementGrams: number | null;
  readonly effortPercent: number | null;
}

/** A day of practice on this device. */
export interface PracticeDay {
  /** `YYYY-MM-DD`. */
  readonly day: string;
  readonly sessionId: string;
  /** How many throws of each athlete were written down. */
  readonly rounds: Readonly<Record<string, number>>;
}

/** What a phone keeps so that it works without a network. */
export interface KeptNotes {
  readonly squad: { readonly athletes: readonly AthleteNotes[]; readonly asOfMs: number } | null;
  /** By event. */
  readonly vocabularies: Readonly<Record<string, Vocabulary>>;
  readonly practice: PracticeDay | null;
  /** By athlete. */
  readonly thrown: Readonly<Record<string, Thrown>>;
}

export const NOTHING_KEPT: KeptNotes = { squad: null, vocabularies: {}, practice: null, thrown: {} };

/** Opens what this device keeps. An older page that still has it open gives way. */
export function openNotebookDatabase(): Promise<IDBPDatabase> {
  return openDB('sectorline-notebook', 1, {
    upgrade(database) {
      createOutbox(database);
      database.createObjectStore('kept');
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });
}
