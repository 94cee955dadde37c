/** A document that rises in version. */
export interface Versioned {
  readonly version: number;
}

/** `live`: changes come in by themselves. `asked`: it is asked for now and then. `failing`: the server does not answer. */
export type Freshness = 'live' | 'asked' | 'failing';

export interface Reader<T extends Versioned> {
  /** A newer version than all before. */
  readonly take: (snapshot: T) => void;
  /** How fresh what was taken is; `asOf`: when it was last known to be the newest, in ms. */
  readonly tell: (freshness: Freshness, asOf: number) => void;
}

const FIRST_WAIT_MS = 1_000;
const LONGEST_WAIT_MS = 30_000;
/** Where nothing comes in by itself it is asked for so often. */
const ASK_MS = 15_000;
/** So long a connection may be silent before it is asked whether it is still one. */
const SILENCE_MS = 45_000;
/** So long after the server has refused events it is not asked for them again. */
const WITHOUT_EVENTS_MS = 60_000;

/**
 * Follows what is at an address: by events while there is a connection, otherwise by asking. Whoever comes back waits a
 * random time, so that a crowd does not come back at once.
 */
export class Following<T extends Versioned> {
  private version = -1;
  private asOf = 0;
  private failures = 0;
  private eventsFrom = 0;
  private isOver = false;
  private source: EventSource | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** @param events where changes are told, and what the events are called; null: nowhere */
  constructor(
    private readonly address: string,
    private readonly events: readonly [address: string, name: string] | null,
    private readonly reader: Reader<T>,
  ) {
    void this.begin();
  }

  end(): void {
    this.isOver = true;
    clearTimeout(this.timer);
    this.source?.close();
  }

  private async begin(): Promise<void> {
    if (!(await this.ask())) return this.fail();
    if (this.isOver) return;
    if (this.events !== null && Date.now() >= this.eventsFrom) return this.listen(this.events);
    this.reader.tell('asked', this.asOf);
    this.later(between(ASK_MS), () => void this.begin());
  }

  /** The browser keeps the answer with its validator and asks whether there is another one. */
  private async ask(): Promise<boolean> {
    try {
      const answer = await fetch(this.address, { cache: 'no-cache', credentials: 'omit' });
      if (!answer.ok) return false;
      this.accept((await answer.json()) as T);
      return true;
    } catch {
      return false;
    }
  }

  private accept(snapshot: T): void {
    if (this.isOver) return;
    this.asOf = Date.now();
    if (snapshot.version <= this.version) return;
    this.version = snapshot.version;
    this.reader.take(snapshot);
  }

  private listen([address, name]: readonly [string, string]): void {
    const source = new EventSource(address);
    this.source = source;
    source.onopen = () => this.hear();
    source.addEventListener(name, ({ data }: MessageEvent<string>) => {
      this.accept(JSON.parse(data) as T);
      this.hear();
    });
    source.onerror = () => {
      // Closed at once: there are no events to be had here, which is no reason to call the server silent.
      if (source.readyState === EventSource.CLOSED) this.eventsFrom = Date.now() + WITHOUT_EVENTS_MS;
      source.close();
      this.later(between(FIRST_WAIT_MS), () => void this.begin());
    };
  }

  private hear(): void {
    this.failures = 0;
    this.reader.tell('live', this.asOf);
    this.later(SILENCE_MS, () => void this.ask().then((isThere) => (isThere ? this.hear() : this.fail())));
  }

  private fail(): void {
    this.source?.close();
    if (this.isOver) return;
    this.reader.tell('failing', this.asOf);
    this.later(
      between(Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** this.failures)),
      () => void this.begin(),
    );
    this.failures += 1;
  }

  private later(ms: number, then: () => void): void {
    clearTimeout(this.timer);
    if (!this.isOver) this.timer = setTimeout(then, ms);
  }
}

/** At least half of it. */
function between(ms: number): number {
  return ms / 2 + (Math.random() * ms) / 2;
}
