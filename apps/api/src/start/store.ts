import { checkDurability, migrate, openDatabase, startEmbedded } from '#persistence';
import type { Config } from '../platform/config.js';
import { Database } from '../platform/database/database.js';
import type { Log } from '../platform/log.js';

/** Settings without which an acknowledged entry can be lost in a crash. */
const ACKNOWLEDGED = new Set(['fsync', 'full_page_writes', 'synchronous_commit']);

/** The migrated database of this process. */
export interface Store {
  /** Where it is. */
  readonly url: string;
  readonly database: Database;
  close(): Promise<void>;
}

/** Opens the database that the configuration names, or starts one of our own, and brings it up to date. */
export async function openStore(config: Config, log: Log): Promise<Store> {
  const server = await reach(config, log);
  const migrations = await migrate(server.url);
  if (migrations.length > 0) log.write('info', 'database migrated', { migrations: migrations.join(' ') });
  const source = await openDatabase({
    url: server.url,
    onConnectionLost: (error) => log.failure('database connection lost', error),
  });
  const replicas = await openReplicas(config, log);
  const close = async (): Promise<void> => {
    for (const replica of replicas) await replica.destroy();
    await source.destroy();
    await server.stop();
  };
  const database = new Database(source, replicas);
  try {
    await demandDurability(database, config, log);
  } catch (error) {
    await close();
    throw error;
  }
  return { url: server.url, database, close };
}

/** What cannot be reached when the server starts is done without. */
async function openReplicas(
  { replicaUrls }: Config,
  log: Log,
): Promise<Awaited<ReturnType<typeof openDatabase>>[]> {
  const onConnectionLost = (error: unknown): void => log.failure('replica connection lost', error);
  const opened = await Promise.allSettled(replicaUrls.map((url) => openDatabase({ url, onConnectionLost })));
  return opened.flatMap((one) => {
    if (one.status === 'fulfilled') return [one.value];
    log.failure('a replica cannot be reached; it is left out until the next start', one.reason);
    return [];
  });
}

async function reach(config: Config, log: Log): Promise<{ readonly url: string; stop(): Promise<void> }> {
  if (config.databaseUrl !== null) return { url: config.databaseUrl, stop: () => Promise.resolve() };
  const embedded = await startEmbedded({
    home: config.dataDirectory,
    onLost: (error) => log.failure('embedded database lost', error),
  });
  log.write('info', 'embedded database running', { adopted: embedded.adopted });
  return embedded;
}

/** In production nothing is acknowledged that a power cut could take back; elsewhere it is said. */
async function demandDurability({ source }: Database, { production }: Config, log: Log): Promise<void> {
  const faults = await checkDurability(source);
  for (const { setting, value, because, remedy } of faults) {
    const message = `${setting} is ${value}: ${because}. ${remedy}`;
    if (production && ACKNOWLEDGED.has(setting)) throw new Error(message);
    log.write('warn', message);
  }
}
