/**
 * Lets one through at a time for each key, in the order of arrival. Inside one process it keeps those who wait for the
 * same competition from holding a database connection each; the lock on the row decides all the same.
 */
export class Turnstile {
  private readonly last = new Map<string, Promise<unknown>>();

  async pass<T>(key: string, work: () => Promise<T>): Promise<T> {
    const before = this.last.get(key) ?? Promise.resolve();
    const mine = before.then(work, work);
    this.last.set(key, mine);
    try {
      return await mine;
    } finally {
      if (this.last.get(key) === mine) this.last.delete(key);
    }
  }
}
