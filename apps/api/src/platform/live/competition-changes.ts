import { LiveBus } from './live-bus.js';

export interface CompetitionChange {
  readonly competitionId: string;
  readonly version: number;
}

export type Listener = (change: CompetitionChange) => void;

/**
 * Tells readers, here and in the other instances, that a competition has a new version; they read again. Announce after
 * the commit and before the answer, so that whoever recorded something finds it in the next table.
 */
export class CompetitionChanges {
  private readonly listeners = new Set<Listener>();

  constructor(private readonly bus: LiveBus = new LiveBus()) {
    bus.listen({
      hear: (message) => {
        if (message.about !== 'competition') return;
        const change = { competitionId: message.id, version: message.version };
        for (const listener of this.listeners) listener(change);
      },
      // The version poll looks: what is remembered here says for itself how old it is.
      catchUp: () => undefined,
    });
  }

  announce({ competitionId, version }: CompetitionChange): void {
    this.bus.tell({ about: 'competition', id: competitionId, version });
  }

  /** Of a version that this process found out about by itself; the others find it, too. */
  noticed({ competitionId, version }: CompetitionChange): void {
    this.bus.hear({ about: 'competition', id: competitionId, version });
  }

  /** Returns the function that ends it. A listener must not throw and must not wait. */
  listen(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}
