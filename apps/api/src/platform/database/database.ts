import { inSnapshot, inTransaction, reading, type Database as Pool, type Reads, type Tx } from '#persistence';

/** Where services open their transactions; what is done in one is given to the stores as `tx` or `at`. */
export class Database {
  private turn = 0;

  constructor(
    readonly source: Pool,
    /** Copies that follow the source at some distance; only for what may be read at any version that is known. */
    private readonly replicas: readonly Pool[] = [],
  ) {}

  /** One transaction: all of it is stored, or nothing when `work` throws. */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
    return inTransaction(this.source, work);
  }

  /** Reads that need not agree with one another. */
  read<T>(work: (at: Reads) => Promise<T>): Promise<T> {
    return reading(this.source, work);
  }

  /** As `snapshot`, from one of the replicas, in turn; `null`: there is none. */
  replicaSnapshot<T>(work: (at: Reads) => Promise<T>): Promise<T> | null {
    const replica = this.replicas[this.turn++ % Math.max(1, this.replicas.length)];
    return replica ? inSnapshot(replica, work) : null;
  }

  /** Several reads that see the same moment. */
  snapshot<T>(work: (at: Reads) => Promise<T>): Promise<T> {
    return inSnapshot(this.source, work);
  }
}
