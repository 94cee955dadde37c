import pg from 'pg';
import { OWNER } from './cluster.js';
import type { PostmasterFile } from './postmaster-file.js';

/** Any number; nothing else locks in the maintenance database. */
const PRESENCE_LOCK = 7_305_220;

/**
 * One process's mark that it uses the server: a connection with a shared lock. Whoever leaves and gets the lock for
 * itself alone is the last one and may stop the server; whoever comes meanwhile waits and is sent away when it stops.
 */
export class Presence {
  private left = false;

  private constructor(
    private readonly client: pg.Client,
    readonly port: number,
  ) {}

  /** `null`: at that port there is nobody, not the server of this file, or one that is starting or stopping. */
  static async join(file: PostmasterFile, password: string): Promise<Presence | null> {
    const client = new pg.Client({
      host: '127.0.0.1',
      port: file.port,
      user: OWNER,
      password,
      database: 'postgres',
      application_name: 'sectorline presence',
      connectionTimeoutMillis: 5_000,
      keepAlive: true,
    });
    client.on('error', () => undefined);
    try {
      await client.connect();
      if (await isServerOf(client, file)) {
        await client.query('SELECT pg_advisory_lock_shared($1)', [PRESENCE_LOCK]);
        socketOf(client).unref();
        return new Presence(client, file.port);
      }
    } catch {
      // Not there, not ours, or going away: the caller tries again or starts one.
    }
    await client.end().catch(() => undefined);
    return null;
  }

  /** Calls back once if the connection is lost otherwise than by leaving. */
  onLost(callback: () => void): void {
    this.client.once('end', () => {
      if (!this.left) callback();
    });
  }

  /** True: nobody else is there, and nobody can come until `end`. */
  async leave(): Promise<boolean> {
    this.left = true;
    return this.holding(async () => {
      await this.client.query('SELECT pg_advisory_unlock_shared($1)', [PRESENCE_LOCK]);
      const { rows } = await this.client.query<{ alone: boolean }>(
        'SELECT pg_try_advisory_lock($1) AS alone',
        [PRESENCE_LOCK],
      );
      return rows[0]?.alone === true;
    }).catch(() => false);
  }

  async end(): Promise<void> {
    // Whoever has nothing else to do waits for this goodbye, too, instead of ending with it unsaid.
    socketOf(this.client).ref();
    await this.client.end().catch(() => undefined);
  }

  /** Makes the database if it is not there. `name` is one of ours, not input. */
  async ensureDatabase(name: string): Promise<void> {
    await this.holding(async () => {
      const { rowCount } = await this.client.query('SELECT FROM pg_database WHERE datname = $1', [name]);
      if (rowCount === 0) {
        await this.client.query(`CREATE DATABASE ${pg.escapeIdentifier(name)}`).catch(unlessThere);
      }
    });
  }

  /** The mark alone does not keep the process alive; a question that waits for its answer does. */
  private async holding<T>(work: () => Promise<T>): Promise<T> {
    const socket = socketOf(this.client);
    socket.ref();
    try {
      return await work();
    } finally {
      socket.unref();
    }
  }
}

interface Holding {
  ref(): void;
  unref(): void;
}

/** Whether a connection keeps the process alive. The driver lets us say so, and its types do not. */
function socketOf(client: pg.Client): Holding {
  return client as unknown as Holding;
}

const DUPLICATE_DATABASE = '42P04';
const UNIQUE_VIOLATION = '23505';

function unlessThere(error: unknown): void {
  const code = (error as { code?: unknown }).code;
  if (code !== DUPLICATE_DATABASE && code !== UNIQUE_VIOLATION) throw error;
}

/** Another server may have got the port since the file was written; its start would be another one. */
async function isServerOf(client: pg.Client, { startedAtS }: PostmasterFile): Promise<boolean> {
  const { rows } = await client.query<{ started: number }>(
    'SELECT floor(extract(epoch FROM pg_postmaster_start_time()))::float8 AS started',
  );
  return Math.abs((rows[0]?.started ?? 0) - startedAtS) <= 5;
}
