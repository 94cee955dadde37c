import { inSnapshot, inTransaction, reading, type Database as Pool, type Reads, type Tx } from '#persistence';

/** Where services open their transactions; what is done in one is given to the stores as `tx` or `at`. */
export class Database {
  constructor(readonly source: Pool) {}

  /** One transaction: all of it is stored, or nothing when `work` throws. */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
    return inTransaction(this.source, work);
  }

  /** Reads that need not agree with one another. */
  read<T>(work: (at: Reads) => Promise<T>): Promise<T> {
    return reading(this.source, work);
  }

  /** Several reads that see the same moment. */
  snapshot<T>(work: (at: Reads) => Promise<T>): Promise<T> {
    return inSnapshot(this.source, work);
  }
}
