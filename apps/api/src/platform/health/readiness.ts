import { Database } from '../database/database.js';
import type { Log } from '../log.js';
import { migrationsPending } from '#persistence';

export type Readiness = 'ready' | 'stopping' | 'database unreachable' | 'migrations missing';

/** Whether this process should be sent work now. */
export class ReadinessProbe {
  private stopping = false;

  constructor(
    private readonly database: Database,
    private readonly log: Log,
  ) {}

  /** From now on no new work, so that a balancer looks elsewhere while open requests finish. */
  stop(): void {
    this.stopping = true;
  }

  get isStopping(): boolean {
    return this.stopping;
  }

  async check(): Promise<Readiness> {
    if (this.stopping) return 'stopping';
    try {
      return (await migrationsPending(this.database.source)) ? 'migrations missing' : 'ready';
    } catch (error) {
      this.log.failure('readiness check failed', error);
      return 'database unreachable';
    }
  }
}
