import { computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Verdict } from '#rules';
import { t } from '../labels/languages.js';
import type { ApiClient } from '../offline/api-client.js';
import type { Board } from './competition/board-shape.js';
import { boardOf } from './competition/board.js';
import { groupTurns, type GroupTurn } from './competition/group.js';
import { nobody, peopleOf, type Person } from './competition/people.js';
import type { Body, Journalled } from './competition/request.js';
import type { DeskStore, OpenCompetition } from './desk-store.js';
import { emptyDraft, type Draft } from './entry/draft.js';
import type { Reading } from './keeping/reading.js';
import type { Sending } from './keeping/sending.js';

export type Tab = 'entry' | 'standing' | 'more';

/** What is said after something was entered. */
export interface Said {
  readonly kind: 'done' | 'held' | 'refused';
  readonly text: string;
  readonly remedy: string | null;
}

export interface DeskParts {
  readonly store: DeskStore;
  readonly client: ApiClient;
  readonly sending: Sending;
  readonly reading: Reading;
}

/** Everything that the screens work with. */
export class Desk {
  readonly store: DeskStore;
  readonly client: ApiClient;
  readonly sending: Sending;
  readonly reading: Reading;
  readonly tab = signal<Tab>('entry');
  readonly draft = signal<Draft>(emptyDraft());
  /** The trial that is looked at to be put right. */
  readonly trial = signal<string | null>(null);
  readonly said = signal<Said | null>(null);
  readonly board: ReadonlySignal<Board | null>;
  /** Who is called, over all competitions that are called in one order. */
  readonly turns: ReadonlySignal<readonly GroupTurn[]>;
  readonly people: ReadonlySignal<readonly Person[]>;
  /** The link of this device is for the wind gauge. */
  readonly isWindsOnly: ReadonlySignal<boolean>;
  readonly nowMs = signal(Date.now());

  constructor(parts: DeskParts) {
    this.store = parts.store;
    this.client = parts.client;
    this.sending = parts.sending;
    this.reading = parts.reading;
    this.isWindsOnly = computed(() => {
      const grants = this.store.signIn.value?.grants ?? [];
      return grants.length > 0 && grants.every(({ isWindsOnly }) => isWindsOnly === true);
    });
    this.board = computed(() => {
      const open = this.store.open.value;
      return open && boardOf(open);
    });
    this.people = computed(() => {
      const open = this.store.open.value;
      return open ? peopleOf(open.kept.head) : [];
    });
    this.turns = computed(() => {
      const { group, open } = this.store.settings.value;
      if (open === null) return [];
      if (group?.competitionIds.includes(open)) return groupTurns(group, this.store.group.value);
      return (this.board.value?.calls ?? []).map((turn) => ({ competitionId: open, turn }));
    });
    const due = computed(() => this.turns.value[0]?.competitionId ?? null);
    const isBusy = computed(() => this.draft.value.turn !== null || this.trial.value !== null);
    effect(() => {
      if (!isBusy.value) this.follow(due.value);
    });
  }

  /** Opens the competition of whoever is up. */
  private follow(competitionId: string | null): void {
    if (competitionId === null || competitionId === this.store.settings.peek().open) return;
    void this.store.keepSettings({ open: competitionId });
  }

  personOf(key: string): Person {
    const everybody = this.store.group.value.flatMap(({ kept }) => peopleOf(kept.head));
    return everybody.find((one) => one.key === key) ?? nobody(key);
  }

  /** Whom an entry is about; null: nobody. */
  aboutWhom(body: Body | Journalled): Person | null {
    return 'competitor' in body && body.competitor !== null ? this.personOf(body.competitor) : null;
  }

  /** Enters, and says what became of it in the words given. */
  async enter(
    body: Body,
    words: (standing: 'accepted' | 'held') => string,
    entryId?: string,
  ): Promise<Verdict | null> {
    try {
      const verdict = await this.store.enter(body, entryId);
      this.said.value = verdict && saidOf(verdict, words);
      return verdict;
    } catch {
      // The device cannot write: what is shown may be gone with the next empty battery.
      this.said.value = { kind: 'refused', text: t('saved.failing'), remedy: null };
      return null;
    }
  }
}

function saidOf(verdict: Verdict, words: (standing: 'accepted' | 'held') => string): Said {
  switch (verdict.standing) {
    case 'accepted':
      return { kind: 'done', text: words('accepted'), remedy: null };
    case 'held':
      return { kind: 'held', text: `${words('held')}: ${verdict.hold.message}`, remedy: verdict.hold.remedy };
    case 'refused':
      return { kind: 'refused', text: verdict.refusal.message, remedy: verdict.refusal.remedy };
  }
}

export const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error('There is no desk around this.');
  return desk;
}

/** The competition that is open; screens that ask are shown only while one is. */
export function useOpen(): { readonly desk: Desk; readonly open: OpenCompetition; readonly board: Board } {
  const desk = useDesk();
  const open = desk.store.open.value;
  const board = desk.board.value;
  if (!open || !board) throw new Error('No competition is open.');
  return { desk, open, board };
}
