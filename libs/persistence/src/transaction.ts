import type { DataSource, EntityManager, QueryRunner } from 'typeorm';

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
 * The connection broke in the middle of the work: nothing of it was stored, unless the break came after the commit
 * had been sent. `code` is a SQLSTATE, 08006 connection failure.
 */
export class ConnectionLost extends Error {
  override readonly name = 'ConnectionLost';
  readonly code = '08006';
  constructor(cause: unknown) {
    super('The connection to the database was lost.', { cause });
  }
}

/**
 * Runs `work` in one READ COMMITTED transaction: all of it is stored, or nothing when it throws. The level is set
 * on the connection (see `data-source.ts`), which saves a round trip for every transaction.
 */
export async function inTransaction<T>(database: DataSource, work: (tx: Tx) => Promise<T>): Promise<T> {
  return onConnection(database, async (runner) => {
    await runner.startTransaction();
    try {
      const result = await work(runner.manager as unknown as Tx);
      await runner.commitTransaction();
      return result;
    } catch (error) {
      // What went wrong is worth more than that it could not be undone: without a commit nothing stays.
      await runner.rollbackTransaction().catch(() => undefined);
      throw error;
    }
  });
}

/** Runs several reads that see the same moment. */
export async function inSnapshot<T>(database: DataSource, work: (at: Reads) => Promise<T>): Promise<T> {
  return onConnection(database, async (runner) => {
    await runner.query('START TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY');
    try {
      const result = await work(runner.manager as unknown as Reads);
      await runner.query('COMMIT');
      return result;
    } catch (error) {
      await runner.query('ROLLBACK').catch(() => undefined);
      throw error;
    }
  });
}

/** Runs reads that need not agree with one another, each with what is committed when it starts. */
export async function reading<T>(database: DataSource, work: (at: Reads) => Promise<T>): Promise<T> {
  return onConnection(database, (runner) => work(runner.manager as unknown as Reads));
}

async function onConnection<T>(database: DataSource, work: (runner: QueryRunner) => Promise<T>): Promise<T> {
  const runner = database.createQueryRunner();
  try {
    return await work(runner);
  } catch (error) {
    // TypeORM lets go of a connection that broke, and whoever comes next hears of that alone.
    throw runner.isReleased ? new ConnectionLost(error) : error;
  } finally {
    await runner.release();
  }
}
