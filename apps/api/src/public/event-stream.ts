import type { ServerResponse } from 'node:http';

/** One version written out, for all who are told it. */
export interface StreamEvent {
  readonly version: number;
  readonly bytes: Buffer;
}

/**
 * One reader of a stream of server-sent events (HTML Living Standard, section 9.2). While he reads nothing, the newest
 * version waits for him and no other.
 */
export class EventStream {
  private isBlocked = false;
  private waiting: StreamEvent | null = null;
  private blockedSinceMs = Infinity;

  constructor(
    private readonly response: ServerResponse,
    /** What he has already. */
    private sent: number,
  ) {
    response.on('drain', () => this.goOn());
  }

  offer(event: StreamEvent): void {
    if (event.version <= this.sent) return;
    if (this.isBlocked) this.waiting = event;
    else this.write(event);
  }

  /** Keeps the connection in the memory of whoever is in between. */
  beat(): void {
    if (!this.isBlocked) this.put(HEARTBEAT);
  }

  /** Cuts the connection if nothing has been read since then. */
  cutIfBlockedSince(ms: number): void {
    if (this.blockedSinceMs < ms) this.response.destroy();
  }

  /** There is nothing more to be told. */
  end(): void {
    this.response.end(END);
  }

  private goOn(): void {
    this.isBlocked = false;
    this.blockedSinceMs = Infinity;
    const { waiting } = this;
    this.waiting = null;
    if (waiting) this.write(waiting);
  }

  private write({ version, bytes }: StreamEvent): void {
    this.sent = version;
    this.put(bytes);
  }

  private put(bytes: Buffer): void {
    this.isBlocked = !this.response.write(bytes);
    if (this.isBlocked) this.blockedSinceMs = Math.min(this.blockedSinceMs, Date.now());
  }
}

const HEARTBEAT = Buffer.from(':\n\n');
const END = Buffer.from('event: end\ndata:\n\n');
