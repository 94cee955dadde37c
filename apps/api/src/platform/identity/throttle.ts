import { LRUCache } from 'lru-cache';
import { ApiError } from '../errors/api-error.js';

const TRIES = 5;
const WINDOW_MS = 60_000;
/** Beyond this the keys that were quiet the longest are forgotten, so that a flood of addresses fills no memory. */
const REMEMBERED = 20_000;

/**
 * Counts failures to prove who one is: after five in a minute for an account, or from an address, the next one waits.
 * What succeeds does not count, so that a crew behind one address can sign in together.
 */
export class Throttle {
  private readonly failures = new LRUCache<string, readonly number[]>({ max: REMEMBERED });

  constructor(private readonly nowMs: () => number = Date.now) {}

  /**
   * Runs `attempt`; `hasFailed` says of its result whether it counts. A try counts from its beginning, so that a
   * hundred at once are no way round. Throws RATE_LIMITED without running it when one of `keys` has no try left.
   */
  async attempt<T>(
    keys: readonly string[],
    attempt: () => Promise<T>,
    hasFailed: (result: T) => boolean,
  ): Promise<T> {
    const atMs = this.nowMs();
    const waitMs = Math.max(...keys.map((key) => this.waitOf(key, atMs)));
    if (waitMs > 0) {
      throw new ApiError('RATE_LIMITED', 'Too many tries; wait a little.', { retryAfterMs: waitMs });
    }
    for (const key of keys) this.failures.set(key, [...this.recent(key, atMs), atMs]);
    const result = await attempt();
    if (!hasFailed(result)) for (const key of keys) this.takeBack(key, atMs);
    return result;
  }

  private waitOf(key: string, nowMs: number): number {
    const recent = this.recent(key, nowMs);
    const first = recent.at(-TRIES);
    return first === undefined ? 0 : first + WINDOW_MS - nowMs;
  }

  private recent(key: string, nowMs: number): number[] {
    return (this.failures.get(key) ?? []).filter((atMs) => atMs > nowMs - WINDOW_MS);
  }

  private takeBack(key: string, atMs: number): void {
    const left = [...(this.failures.get(key) ?? [])];
    const at = left.indexOf(atMs);
    if (at >= 0) left.splice(at, 1);
    this.failures.set(key, left);
  }
}
