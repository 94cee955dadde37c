import { ApiError } from '../errors/api-error.js';

/** Whoever listens, at one address: a family, a club house, or a stadium behind one router. */
export interface LiveLimits {
  /** Open connections and streams of one address. */
  readonly perAddress: number;
}

/** Counts who listens, so that nobody can hold everything that there is. */
export class LiveConnections {
  private readonly open = new Map<string, number>();

  constructor(private readonly limits: LiveLimits) {}

  get count(): number {
    let sum = 0;
    for (const open of this.open.values()) sum += open;
    return sum;
  }

  /** Lets one in; call what is returned when it has gone. Null: too many are open from this address. */
  enter(address: string): (() => void) | null {
    const open = this.open.get(address) ?? 0;
    if (open >= this.limits.perAddress) return null;
    this.open.set(address, open + 1);
    let isGone = false;
    return () => {
      if (isGone) return;
      isGone = true;
      const left = this.open.get(address)! - 1;
      if (left === 0) this.open.delete(address);
      else this.open.set(address, left);
    };
  }
}

export function tooManyListeners(what: string): ApiError {
  return new ApiError('RATE_LIMITED', `Too many ${what} are open from here; close some first.`, {
    retryAfterMs: 10_000,
    status: 429,
  });
}
