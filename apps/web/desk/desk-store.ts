import { computed, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { AnyEntry, Verdict } from '#rules';
import { uuidV7 } from '../offline/uuid-v7.js';
import { decide, foldWaiting, restore, type Folded } from './competition/fold.js';
import { headWith } from './competition/list-changes.js';
import type { Body } from './competition/request.js';
import type { KeptCompetition, Settings, SignIn, WaitingEntry } from './keeping/database.js';
import type { Keeper, Kept } from './keeping/keeper.js';

/** How the desk stands to the server. */
export type Link = 'unknown' | 'online' | 'offline' | 'no-right';

/** What the server says a mark of this device would be. */
export interface RecordClaim {
  readonly kind: string;
  readonly relation: string;
  readonly bib: string;
  readonly mark: string;
  readonly before: string | null;
  /** The club or the meet. */
  readonly of: string | null;
}

/** One competition with everything that this device knows of it. */
export interface OpenCompetition {
  readonly kept: KeptCompetition;
  readonly folded: Folded;
  /** What the fold says of entries that wait, by their id. */
  readonly verdicts: ReadonlyMap<string, Verdict>;
}

/**
 * What the desk shows, and the one way in which it changes. What is entered is folded and shown at once; it is called
 * saved when it is written to this device; it is sent after that.
 */
export class DeskStore {
  readonly signIn = signal<SignIn | null>(null);
  readonly settings: Signal<Settings>;
  readonly competitions = signal<readonly KeptCompetition[]>([]);
  readonly outbox = signal<readonly WaitingEntry[]>([]);
  /** Ids of entries that are not written to this device yet. */
  readonly unsaved = signal<ReadonlySet<string>>(new Set());
  /** Writing to this device failed: what is shown may be lost. */
  readonly isFailing = signal(false);
  readonly link = signal<Link>('unknown');
  /** Marks that would be records: nobody is called before somebody has seen to them. */
  readonly claims = signal<readonly RecordClaim[]>([]);
  readonly waiting: ReadonlySignal<readonly WaitingEntry[]>;
  /** What needs somebody's eyes: the server would not take it. */
  readonly returned: ReadonlySignal<readonly WaitingEntry[]>;
  readonly open: ReadonlySignal<OpenCompetition | null>;
  /** The open competition, with those that are called in one order with it. */
  readonly group: ReadonlySignal<readonly OpenCompetition[]>;
  /** Called after something was put into the outbox. */
  onEntered: () => void = () => undefined;
  /** Called after what is kept on this device has changed. */
  onKept: () => void = () => undefined;

  private keeping: Promise<void> = Promise.resolve();

  constructor(
    private readonly keeper: Keeper,
    kept: Kept,
    private readonly nowMs: () => number = () => Date.now(),
  ) {
    this.signIn.value = kept.signIn;
    this.settings = signal(kept.settings);
    this.competitions.value = kept.competitions;
    this.outbox.value = kept.outbox;
    this.waiting = computed(() => this.outbox.value.filter(({ state }) => state === 'waiting'));
    this.returned = computed(() => this.outbox.value.filter(({ state }) => state !== 'waiting'));
    const bases = computed(() => {
      const { open, group } = this.settings.value;
      const ids = open !== null && group?.competitionIds.includes(open) ? group.competitionIds : [open];
      return ids.flatMap((id) => {
        const kept = this.competitions.value.find((one) => one.id === id);
        return kept ? [{ kept, folded: restore(kept.head, kept.items) }] : [];
      });
    });
    this.group = computed(() => bases.value.map(({ kept, folded }) => this.withOwn(kept, folded)));
    this.open = computed(
      () => this.group.value.find(({ kept }) => kept.id === this.settings.value.open) ?? null,
    );
  }

  /** What the server has, and on top of it what this device has entered. */
  private withOwn(kept: KeptCompetition, base: Folded): OpenCompetition {
    const known = new Set(kept.items.map(({ entry }) => entry.id));
    const own = this.waiting.value.filter(
      ({ competitionId, entryId }) => competitionId === kept.id && !known.has(entryId),
    );
    const bodies = own.map(({ body }) => body);
    const head = headWith(kept.head, bodies);
    return {
      kept: head === kept.head ? kept : { ...kept, head },
      ...foldWaiting(
        head === kept.head ? base : restore(head, kept.items),
        own.map((entry) => this.entryOf(entry, kept)),
      ),
    };
  }

  /** As the journal will have it, when this device sends it. */
  entryOf({ entryId: id, body }: Pick<WaitingEntry, 'entryId' | 'body'>, kept: KeptCompetition): AnyEntry {
    return { id, by: kept.capacity, actor: this.signIn.value?.holder ?? '', ...body };
  }

  /** What would become of an entry; nothing is entered. */
  tryOut(body: Body): Verdict | null {
    const open = this.open.value;
    return open && this.decided(open, { entryId: uuidV7(this.nowMs()), body });
  }

  /** On the start list as it would be with the entry. */
  private decided({ kept, folded }: OpenCompetition, entry: Pick<WaitingEntry, 'entryId' | 'body'>): Verdict {
    const { body } = entry;
    const head = body.kind === 'late-entry' ? headWith(kept.head, [body]) : kept.head;
    const { journal } = folded.state;
    const items = journal.map((item, at) => ({ ...item, sequence: at + 1 }));
    const before = head === kept.head ? folded : restore(head, items);
    return decide(before, this.entryOf(entry, kept)).verdict;
  }

  /**
   * Enters into the open competition. What can never be right is given back and not kept; everything else is shown at
   * once. The promise is kept when this device has it.
   */
  async enter(body: Body, entryId: string = uuidV7(this.nowMs())): Promise<Verdict | null> {
    const open = this.open.value;
    if (!open) return null;
    const entry: WaitingEntry = {
      entryId,
      competitionId: open.kept.id,
      body,
      madeAtMs: this.nowMs(),
      basedOn: open.kept.version,
      state: 'waiting',
      refusal: null,
    };
    const verdict = this.decided(open, entry);
    if (verdict.standing === 'refused') return verdict;
    await this.takeIn([entry]);
    return verdict;
  }

  /** Shows entries, writes them to this device, then lets them be sent. */
  async takeIn(entries: readonly WaitingEntry[]): Promise<void> {
    const known = new Set(this.outbox.value.map(({ entryId }) => entryId));
    const fresh = entries.filter(({ entryId }) => !known.has(entryId));
    const ids = fresh.map(({ entryId }) => entryId);
    this.unsaved.value = new Set([...this.unsaved.value, ...ids]);
    this.outbox.value = [...this.outbox.value, ...fresh];
    try {
      await this.keeper.keepEntries(fresh);
      this.unsaved.value = new Set([...this.unsaved.value].filter((id) => !ids.includes(id)));
    } catch (error) {
      this.isFailing.value = true;
      throw error;
    }
    this.onKept();
    this.onEntered();
  }

  async change(entryId: string, change: Partial<WaitingEntry>): Promise<void> {
    await this.keeper.changeEntry(entryId, change);
    this.outbox.value = this.outbox.value.map((one) =>
      one.entryId === entryId ? { ...one, ...change } : one,
    );
    this.onKept();
    this.onEntered();
  }

  /** Lets go of an entry that the server would not take. */
  async drop(entryId: string): Promise<void> {
    await this.keeper.dropEntry(entryId);
    this.outbox.value = this.outbox.value.filter((one) => one.entryId !== entryId);
    this.onKept();
  }

  /** What the server has now; entries of this device that are in it wait no longer. */
  keepCompetition(competition: KeptCompetition): Promise<void> {
    const kept = this.keeping.then(() => this.keepUnlessOlder(competition));
    this.keeping = kept.catch(() => undefined);
    return kept;
  }

  /**
   * What was read and what was answered come in by two ways: one after the other, and never back to an older version,
   * in which the last entry of this device would be missing.
   */
  private async keepUnlessOlder(competition: KeptCompetition): Promise<void> {
    const now = this.competitions.value.find(({ id }) => id === competition.id);
    if (now && now.version > competition.version) return;
    await this.keeper.keepCompetition(competition);
    const there = new Set(competition.items.map(({ entry }) => entry.id));
    const others = this.competitions.value.filter(({ id }) => id !== competition.id);
    this.competitions.value = [...others, competition];
    this.outbox.value = this.outbox.value.filter(({ entryId }) => !there.has(entryId));
    this.onKept();
  }

  /** Another post may be for another competition: the one that was open is chosen anew. */
  async keepSignIn(signIn: SignIn): Promise<void> {
    const isSame = this.signIn.value?.holder === signIn.holder;
    await this.keeper.keepSignIn(signIn);
    this.signIn.value = signIn;
    this.link.value = 'unknown';
    if (!isSame) await this.keepSettings({ open: null, group: null });
    this.onKept();
    this.onEntered();
  }

  async keepSettings(change: Partial<Settings>): Promise<void> {
    const settings = { ...this.settings.value, ...change };
    this.settings.value = settings;
    await this.keeper.keepSettings(settings);
  }

  /** Another page of this device changed what is kept. */
  async readAgain(): Promise<void> {
    const kept = await this.keeper.readAll();
    this.signIn.value = kept.signIn;
    this.competitions.value = kept.competitions;
    const stored = new Set(kept.outbox.map(({ entryId }) => entryId));
    const unsaved = this.outbox.value.filter(
      ({ entryId }) => this.unsaved.value.has(entryId) && !stored.has(entryId),
    );
    this.outbox.value = [...kept.outbox, ...unsaved];
  }
}
