/**
 * A queue of one: what is not taken before something newer comes is never sent. However slow somebody reads, one thing
 * waits for him, and what he gets is the newest.
 */
export class LatestOnly<T> {
  private waiting: T | null = null;
  private taker: ((next: T | null) => void) | null = null;
  private isOver = false;
  /** When what waits began to wait for a slow reader, in milliseconds; null: nothing waits. */
  waitingSinceMs: number | null = null;

  offer(one: T): void {
    if (this.isOver) return;
    const { taker } = this;
    if (taker) {
      this.taker = null;
      taker(one);
      return;
    }
    this.waiting = one;
    this.waitingSinceMs ??= Date.now();
  }

  /** Null: it is over. One at a time may wait for it. */
  take(): Promise<T | null> {
    const { waiting } = this;
    if (waiting !== null || this.isOver) {
      this.waiting = null;
      this.waitingSinceMs = null;
      return Promise.resolve(waiting);
    }
    return new Promise((resolve) => (this.taker = resolve));
  }

  end(): void {
    this.isOver = true;
    this.waiting = null;
    this.waitingSinceMs = null;
    this.taker?.(null);
    this.taker = null;
  }
}
