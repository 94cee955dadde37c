import type { Log } from '../platform/log.js';

/** Open requests get so long to finish before their connections are cut. */
const PATIENCE_MS = 5_000;
/** After so long the process ends, whatever is still open. */
const DEADLINE_MS = 9_000;

export interface Stoppable {
  /** From now on not ready: a balancer sends nothing new. */
  refuseWork(): void;
  /** Ends when every open request has its answer. */
  closeServer(): Promise<void>;
  cutConnections(): void;
  closeStore(): Promise<void>;
}

/** Ends the process on SIGTERM or SIGINT: new work refused, open requests answered, the database closed. */
export function stopOnSignals(server: Stoppable, log: Log): void {
  let stopping = false;
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.on(signal, () => {
      if (stopping) return;
      stopping = true;
      setTimeout(() => process.exit(1), DEADLINE_MS).unref();
      stop(server, log).then(
        () => process.exit(0),
        (error: unknown) => {
          log.failure('stopping failed', error);
          process.exit(1);
        },
      );
    });
  }
}

async function stop(server: Stoppable, log: Log): Promise<void> {
  log.write('info', 'stopping');
  server.refuseWork();
  const cut = setTimeout(() => server.cutConnections(), PATIENCE_MS);
  await server.closeServer();
  clearTimeout(cut);
  await server.closeStore();
}
