import { signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { kindOf } from '../offline/object-ids.js';
import { MEET, MEETS, MEET_OF, type MeetChoice, type MeetNow } from './meet-now.js';
import type { Session } from '../offline/session.js';

export type Link = 'unknown' | 'online' | 'offline' | 'no-right';

/** What the server said to something that was sent. */
export interface Said {
  readonly kind: 'done' | 'held' | 'refused';
  readonly text: string;
  readonly rule: string | null;
  readonly remedy: string | null;
}

interface UserError {
  readonly message: string;
  readonly rule?: string | null;
  readonly remedy?: string | null;
}

/** What every mutation answers. */
export interface Payload {
  readonly userErrors: readonly UserError[];
  readonly entry?: {
    readonly standing: string;
    readonly hold: { message: string; remedy: string } | null;
  } | null;
}

/**
 * Everything that the screens work with. The office keeps nothing: what it shows is what the server said last, with the
 * time, and what cannot be sent is not done.
 */
export class Office {
  readonly meets = signal<readonly MeetChoice[] | null>(null);
  readonly meetId = signal<string | null>(null);
  readonly meet = signal<MeetNow | null>(null);
  readonly link = signal<Link>('unknown');
  /** When the server answered last. */
  readonly asOfMs = signal<number | null>(null);
  readonly nowMs = signal(Date.now());
  readonly said = signal<Said | null>(null);
  readonly isBusy = signal(false);
  /** Rises with everything that was done here, so that screens read again what they show. */
  readonly round = signal(0);

  constructor(readonly session: Session) {}

  /** Of the meets that this session is for. */
  async findMeets(): Promise<void> {
    const found: MeetChoice[] = [];
    for (const { role, on } of this.session.grants.value ?? []) {
      if (role === 'ADMIN')
        found.push(
          ...((await this.read<{ meets: Edges }>(MEETS, {}))?.meets.edges.map(({ node }) => node) ?? []),
        );
      else if (on !== null && kindOf(on) === 'Meet')
        found.push(...of((await this.read<{ meet: MeetChoice | null }>(MEET_OF.meet, { id: on }))?.meet));
      else if (on !== null && kindOf(on) === 'Competition') {
        const answer = await this.read<{ competition: { meet: MeetChoice } | null }>(MEET_OF.competition, {
          id: on,
        });
        found.push(...of(answer?.competition?.meet));
      }
    }
    const meets = found.filter(({ id }, at) => found.findIndex((other) => other.id === id) === at);
    this.meets.value = meets;
    if (!meets.some(({ id }) => id === this.meetId.value)) this.meetId.value = meets[0]?.id ?? null;
    await this.look();
  }

  /** Reads the meet as it stands. */
  async look(): Promise<void> {
    const id = this.meetId.value;
    if (id === null) return;
    const answer = await this.read<{ meet: MeetNow | null }>(MEET, { id });
    if (answer?.meet) this.meet.value = answer.meet;
  }

  /** Null: there is no answer, and the head of the page says so. */
  async read<T>(query: string, variables: Readonly<Record<string, unknown>>): Promise<T | null> {
    const answer = await this.session.send<T>(query, variables);
    if (answer.ok) {
      this.link.value = 'online';
      this.asOfMs.value = Date.now();
      return answer.data;
    }
    const { kind } = answer.failure;
    if (kind === 'refused')
      this.say({ kind: 'refused', text: answer.failure.message, rule: null, remedy: null });
    else this.link.value = kind === 'no-right' ? 'no-right' : 'offline';
    return null;
  }

  /** Sends a mutation and says what came of it. True: it was done, or is kept as a question. */
  async act<P extends Payload>(
    query: string,
    input: object,
    words: { readonly done: string; readonly away: string },
  ): Promise<P | null> {
    this.isBusy.value = true;
    const data = await this.read<Readonly<Record<string, P>>>(query, { input });
    this.isBusy.value = false;
    const payload = data && Object.values(data)[0];
    if (!payload) {
      if (this.link.value !== 'online')
        this.say({ kind: 'refused', text: words.away, rule: null, remedy: null });
      return null;
    }
    const [error] = payload.userErrors;
    if (error) {
      this.say({
        kind: 'refused',
        text: error.message,
        rule: error.rule ?? null,
        remedy: error.remedy ?? null,
      });
      return null;
    }
    const hold = payload.entry?.hold ?? null;
    this.say(
      hold
        ? { kind: 'held', text: hold.message, rule: null, remedy: hold.remedy }
        : { kind: 'done', text: words.done, rule: null, remedy: null },
    );
    this.round.value += 1;
    void this.look();
    return payload;
  }

  say(said: Said | null): void {
    this.said.value = said;
  }

  /** Holds a right on the meet as a whole. */
  has(role: 'DIRECTOR' | 'REFEREE'): boolean {
    return (this.session.grants.value ?? []).some(
      (grant) => grant.role === role && grant.on === this.meetId.value,
    );
  }

  get mayDecide(): boolean {
    return this.has('DIRECTOR') || this.has('REFEREE');
  }

  get isAdmin(): boolean {
    return (this.session.grants.value ?? []).some(({ role }) => role === 'ADMIN');
  }

  get mayDirect(): boolean {
    return this.has('DIRECTOR') || this.isAdmin;
  }
}

interface Edges {
  readonly edges: readonly { readonly node: MeetChoice }[];
}

function of<T>(one: T | null | undefined): T[] {
  return one ? [one] : [];
}

export const OfficeContext = createContext<Office | null>(null);

export function useOffice(): Office {
  const office = useContext(OfficeContext);
  if (!office) throw new Error('There is no office around this.');
  return office;
}
