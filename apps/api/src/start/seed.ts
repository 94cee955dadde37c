import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** What `seed/load.ts` offers: ids that it makes itself, and the way to load them through the API. */
export interface DemoSeed {
  readonly DEMO: {
    /** UUID of the meet; it is published last. */
    readonly meetId: string;
    /** UUID of the competition that is going on. */
    readonly runningCompetitionId: string;
    /** UUIDs of the athletes whom the demonstration's coach follows. */
    readonly coachedAthleteIds: readonly string[];
  };
  /** Enters everything that is not there yet. `baseUrl` without `/graphql`. */
  loadDemo(baseUrl: string, adminToken: string): Promise<void>;
  /** Puts the coach's squad on record. */
  enterSquad(baseUrl: string, adminToken: string): Promise<unknown>;
  /** Two seasons of the squad, as its coach enters them; ends early when `isOver` says so. */
  loadSquad(door: {
    readonly baseUrl: string;
    readonly adminToken: string;
    readonly coachToken: string;
    readonly isOver: () => boolean;
  }): Promise<void>;
}

/** The demonstration season beside this program, as source or compiled; null when it was left out. */
export async function findSeed(): Promise<DemoSeed | null> {
  for (const name of ['load.ts', 'load.js']) {
    const url = new URL(`../../../../seed/${name}`, import.meta.url);
    if (existsSync(fileURLToPath(url))) return (await import(url.href)) as DemoSeed;
  }
  return null;
}
