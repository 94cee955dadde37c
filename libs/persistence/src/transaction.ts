import type { DataSource, EntityManager } from 'typeorm';

declare const reads: unique symbol;
declare const writes: unique symbol;

/** A place to read from. Opaque: it is passed on to stores, and ends with the function it was given to. */
export interface Reads {
  readonly [reads]: true;
}

/** An open transaction that may also write. */
export interface Tx extends Reads {
  readonly [writes]: true;
}

/** For stores only. The manager is bound to one connection, so nothing done through it leaves the transaction. */
export function managerOf(tx: Reads): EntityManager {
  return tx as unknown as EntityManager;
}

/**
 * Runs `work` in one READ COMMITTED transaction: all of it is stored, or nothing when it throws. The level is set
 * on the connection (see `data-source.ts`), which saves a round trip for every transaction.
 */
export async function inTransaction<T>(database: DataSource, work: (tx: Tx) => Promise<T>): Promise<T> {
  return database.transaction((manager) => work(manager as unknown as Tx));
}

/** Runs several reads that see the same moment. */
export async function inSnapshot<T>(database: DataSource, work: (at: Reads) => Promise<T>): Promise<T> {
  const runner = database.createQueryRunner();
  try {
    await runner.query('START TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY');
    const result = await work(runner.manager as unknown as Reads);
    await runner.query('COMMIT');
    return result;
  } catch (error) {
    // What went wrong is worth more than that it could not be undone: nothing was written.
    await runner.query('ROLLBACK').catch(() => undefined);
    throw error;
  } finally {
    await runner.release();
  }
}

/** Runs reads that need not agree with one another, each with what is committed when it starts. */
export async function reading<T>(database: DataSource, work: (at: Reads) => Promise<T>): Promise<T> {
  const runner = database.createQueryRunner();
  try {
    return await work(runner.manager as unknown as Reads);
  } finally {
    await runner.release();
  }
}
