import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { competitions } from '#persistence';
import { Database } from '../database/database.js';
import { CompetitionChanges } from '../live/competition-changes.js';
import { LiveBus } from '../live/live-bus.js';
import { Log } from '../log.js';
import { CompetitionMemory } from './competition-memory.js';

/** A message that gets lost is made up for after this long, so that every reader is right within five seconds. */
const EVERY_MS = 2_000;

/** The safety net behind the bus: compares what is remembered here with what is stored, over and over. */
@Injectable()
export class VersionWatch implements OnModuleDestroy {
  private readonly timer: NodeJS.Timeout | undefined;
  private looking = false;

  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
    private readonly changes: CompetitionChanges,
    private readonly log: Log,
    bus: LiveBus,
  ) {
    if (!bus.reachesOthers) return;
    this.timer = setInterval(() => void this.look(), EVERY_MS).unref();
    bus.listen({ hear: () => undefined, catchUp: () => void this.look() });
  }

  onModuleDestroy(): void {
    clearInterval(this.timer);
  }

  private async look(): Promise<void> {
    if (this.looking) return;
    this.looking = true;
    try {
      const known = this.memory.remembered();
      if (known.length === 0) return;
      const stored = await this.database.read((at) => competitions.versions(at, known));
      for (const { id, version } of stored) this.changes.noticed({ competitionId: id, version });
    } catch (error) {
      this.log.failure('versions could not be compared', error);
    } finally {
      this.looking = false;
    }
  }
}
