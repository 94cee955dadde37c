import { setTimeout as delay } from 'node:timers/promises';
import { NOTICES_APPLICATION } from '#persistence';
import type { Log } from '../../apps/api/src/platform/log.js';
import type { LiveMessage } from '../../apps/api/src/platform/live/live-message.js';
import type { LiveReceiver, LiveTransport } from '../../apps/api/src/platform/live/live-transport.js';
import { PostgresTransport } from '../../apps/api/src/platform/live/postgres-transport.js';
import { onConnection } from './database.js';

/** Instances hear of one another through the database. */
export const throughPostgres = (url: string, log: Log): LiveTransport => new PostgresTransport(url, log);

/** The same, of which messages get lost: `isLost` says for each that comes in, in order, whether it does. */
export function losing(isLost: (nth: number) => boolean): (url: string, log: Log) => LiveTransport {
  return (url, log) => {
    const whole = new PostgresTransport(url, log);
    let heard = 0;
    return {
      reachesOthers: true,
      start: (receiver: LiveReceiver) =>
        whole.start({
          hear: (message: LiveMessage) => {
            heard += 1;
            if (!isLost(heard)) receiver.hear(message);
          },
          catchUp: () => receiver.catchUp(),
        }),
      send: (message) => whole.send(message),
      close: () => whole.close(),
    };
  };
}

/** Ends the connections of the bus to a database, as a network would; how many there were. */
export async function cutBus(databaseUrl: string): Promise<number> {
  const { pathname } = new URL(databaseUrl);
  return onConnection(databaseUrl, async (client) => {
    const { rowCount } = await client.query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = $1 AND datname = $2`,
      [NOTICES_APPLICATION, pathname.slice(1)],
    );
    return rowCount ?? 0;
  });
}

const PATIENCE_MS = 15_000;

/** Looks again until it is so; the last thing seen, so that a test that fails says what it saw. */
export async function eventually<T>(look: () => Promise<T> | T, isSo: (seen: T) => boolean): Promise<T> {
  const deadline = Date.now() + PATIENCE_MS;
  for (;;) {
    const seen = await look();
    if (isSo(seen) || Date.now() > deadline) return seen;
    await delay(10);
  }
}
