import { computed, signal, type ReadonlySignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Session } from '../offline/session.js';
import type { NoteStore } from './keeping/note-store.js';
import { NoteSending } from './keeping/sending.js';
import { SQUAD, VOCABULARY, type AthleteNotes, type Vocabulary } from './shapes.js';

export type Link = 'unknown' | 'online' | 'offline' | 'no-right';

/** What came of something that was done. */
export interface Said {
  readonly kind: 'done' | 'refused';
  readonly text: string;
  readonly remedy: string | null;
}

interface Payload {
  readonly userErrors: readonly { readonly message: string; readonly remedy: string | null }[];
}

/** Everything that the screens work with. */
export class Notebook {
  readonly link = signal<Link>('unknown');
  readonly nowMs = signal(Date.now());
  readonly said = signal<Said | null>(null);
  readonly isBusy = signal(false);
  /** Rises with everything that was done here, so that screens read again what they show. */
  readonly round = signal(0);
  readonly athletes: ReadonlySignal<readonly AthleteNotes[]>;
  readonly sending: NoteSending;

  constructor(
    readonly session: Session,
    readonly store: NoteStore,
  ) {
    this.athletes = computed(() => store.kept.value.squad?.athletes ?? []);
    this.sending = new NoteSending(store, session, (link) => (this.link.value = link));
    store.onWritten = () => this.sending.go();
  }

  athlete(id: string | null): AthleteNotes | null {
    return this.athletes.value.find(({ athleteId }) => athleteId === id) ?? null;
  }

  get isCoach(): boolean {
    return this.athletes.value.some(({ isCoach }) => isCoach);
  }

  /** Reads who is in the notebook, and the words of their events, for the time without a network. */
  async look(): Promise<void> {
    const answer = await this.read<{ notebookAthletes: readonly AthleteNotes[] }>(SQUAD, {});
    // A list of points that was made here and is not sent yet is newer than what the server has.
    const isAhead = this.store.waiting.value.some(({ mutation }) => mutation === 'checklistSet');
    if (!answer || isAhead) return;
    const squad = { athletes: answer.notebookAthletes, asOfMs: Date.now() };
    await this.store.keep({ squad });
    for (const event of eventsOf(answer.notebookAthletes)) await this.wordsOf(event);
  }

  /** Kept for a day; without a network as they were. */
  async wordsOf(event: string): Promise<Vocabulary | null> {
    const known = this.store.kept.value.vocabularies[event];
    if (known && this.knownWords.has(event)) return known;
    const answer = await this.read<{ faultVocabulary: Vocabulary | null }>(VOCABULARY, { event });
    const vocabulary = answer?.faultVocabulary;
    if (!vocabulary) return known ?? null;
    this.knownWords.add(event);
    const { vocabularies } = this.store.kept.value;
    await this.store.keep({ vocabularies: { ...vocabularies, [event]: vocabulary } });
    return vocabulary;
  }

  /** Read while this page is open. */
  private readonly knownWords = new Set<string>();

  /** Null: there is no answer, and the head of the page says so. */
  async read<T>(query: string, variables: Readonly<Record<string, unknown>>): Promise<T | null> {
    const answer = await this.session.send<T>(query, variables);
    if (answer.ok) {
      this.link.value = 'online';
      return answer.data;
    }
    const { failure } = answer;
    if (failure.kind === 'refused')
      this.said.value = { kind: 'refused', text: failure.message, remedy: null };
    else this.link.value = failure.kind === 'no-right' ? 'no-right' : 'offline';
    return null;
  }

  /** Sends what needs an answer at once. True: it was done. */
  async act(mutation: string, input: object, words: { readonly done: string; readonly away: string }) {
    const type = `${mutation[0]!.toUpperCase()}${mutation.slice(1)}Input`;
    const document = `mutation Notebook($input: ${type}!) { ${mutation}(input: $input) { userErrors { message remedy } } }`;
    this.isBusy.value = true;
    const data = await this.read<Readonly<Record<string, Payload>>>(document, { input });
    this.isBusy.value = false;
    const [refusal] = data?.[mutation]?.userErrors ?? [];
    if (!data && this.link.value === 'online') return false;
    this.said.value = refusal
      ? { kind: 'refused', text: refusal.message, remedy: refusal.remedy }
      : data
        ? { kind: 'done', text: words.done, remedy: null }
        : { kind: 'refused', text: words.away, remedy: null };
    if (refusal || !data) return false;
    this.round.value += 1;
    await this.look();
    return true;
  }

  /** Nothing of the athletes stays behind. */
  async signOut(): Promise<void> {
    await this.store.forget();
    this.session.forget();
  }
}

/** The events that the notes of athletes are about; the discus where there are none yet. */
function eventsOf(athletes: readonly AthleteNotes[]): readonly string[] {
  const events = athletes.flatMap(({ checklists, focuses, stages }) =>
    [...checklists, ...focuses, ...stages].map(({ event }) => event),
  );
  return [...new Set([...events, 'DISCUS'])];
}

export const NotebookContext = createContext<Notebook | null>(null);

export function useNotebook(): Notebook {
  const notebook = useContext(NotebookContext);
  if (!notebook) throw new Error('There is no notebook around this.');
  return notebook;
}

/** `YYYY-MM-DD` where the device is. */
export function dayOf(ms: number): string {
  const date = new Date(ms);
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
