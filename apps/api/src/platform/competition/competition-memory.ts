import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { competitions, type CompetitionRow, type Reads } from '#persistence';
import { Database } from '../database/database.js';
import { CompetitionChanges } from '../live/competition-changes.js';
import { loadCompetition, type LoadedCompetition } from './loaded.js';

const REMEMBERED = 500;

/**
 * The newest version of each competition that this process knows, so that a table is read from the database once a
 * version and not once a viewer. A version never goes back. A change is known here before whoever made it has the
 * answer: `remember` is called between the commit and the answer.
 */
@Injectable()
export class CompetitionMemory {
  private readonly known = new LRUCache<string, LoadedCompetition>({ max: REMEMBERED });
  /** Versions heard of that have not been read yet. */
  private readonly stale = new LRUCache<string, number>({ max: REMEMBERED * 4 });
  private readonly loading = new Map<string, Promise<LoadedCompetition | null>>();
  /** Those that somebody is told of at every version; remembered or not, they are looked after. */
  private readonly watched = new Map<string, { readonly organisationId: string; watchers: number }>();

  constructor(
    private readonly database: Database,
    changes: CompetitionChanges,
  ) {
    changes.listen(({ competitionId, version }) => {
      if ((this.known.get(competitionId)?.row.version ?? -1) < version)
        this.stale.set(competitionId, Math.max(version, this.stale.get(competitionId) ?? -1));
    });
  }

  /** The competition as it is now; `null`: there is none. */
  async current(organisationId: string, id: string): Promise<LoadedCompetition | null> {
    const known = this.atHand(organisationId, id);
    if (known) return known;
    const under = this.loading.get(id);
    if (under) {
      // What is being read may be older than a change heard of since: look again when it is there.
      await under;
      return this.atHand(organisationId, id) ?? this.read(organisationId, id);
    }
    const loading = this.read(organisationId, id).finally(() => this.loading.delete(id));
    this.loading.set(id, loading);
    return loading;
  }

  /** As `current`, for whoever holds the lock on the row that was just read. */
  async locked(at: Reads, row: CompetitionRow): Promise<LoadedCompetition> {
    const known = this.known.get(row.id);
    return known?.row.version === row.version ? { ...known, row } : loadCompetition(at, row);
  }

  /** Keeps what was committed, unless something newer is known. */
  remember(loaded: LoadedCompetition): void {
    const { id, version } = loaded.row;
    if ((this.known.get(id)?.row.version ?? -1) > version) return;
    this.known.set(id, loaded);
    if ((this.stale.get(id) ?? -1) <= version) this.stale.delete(id);
  }

  /** The competition as it is now, if it need not be read first. */
  atHand(organisationId: string, id: string): LoadedCompetition | undefined {
    const known = this.known.get(id);
    if (known?.row.organisationId !== organisationId) return undefined;
    return (this.stale.get(id) ?? -1) > known.row.version ? undefined : known;
  }

  /** What this process knows or is asked to tell of, for whoever compares it with what is stored. */
  remembered(): Pick<CompetitionRow, 'organisationId' | 'id'>[] {
    const known = [...this.known.values()].map(({ row: { organisationId, id } }) => ({ organisationId, id }));
    const others = [...this.watched].filter(([id]) => !this.known.has(id));
    return [...known, ...others.map(([id, { organisationId }]) => ({ organisationId, id }))];
  }

  /** Until the function that is returned is called, its versions are looked after. */
  watch(organisationId: string, id: string): () => void {
    const watched = this.watched.get(id) ?? { organisationId, watchers: 0 };
    watched.watchers += 1;
    this.watched.set(id, watched);
    return () => {
      watched.watchers -= 1;
      if (watched.watchers === 0) this.watched.delete(id);
    };
  }

  private fromPrimary(organisationId: string, id: string): Promise<LoadedCompetition | null> {
    return this.database.snapshot(async (at) => {
      const row = await competitions.find(at, organisationId, id);
      return row && loadCompetition(at, row);
    });
  }

  /**
   * A finished competition is read from a replica, if that has it at the version which the primary has: the primary is
   * asked for the number alone, so nobody is ever shown an older version than before. `null`: not from there.
   */
  private async fromReplica(organisationId: string, id: string): Promise<LoadedCompetition | null> {
    const reading = this.database.replicaSnapshot(async (at) => {
      const row = await competitions.find(at, organisationId, id);
      if (row?.status !== 'official') return null;
      const newest = await this.database.read((primary) =>
        competitions.versionOf(primary, organisationId, id),
      );
      return row.version === newest ? loadCompetition(at, row) : null;
    });
    // A replica that is away takes nothing from anybody.
    return reading?.catch(() => null) ?? null;
  }

  private async read(organisationId: string, id: string): Promise<LoadedCompetition | null> {
    const loaded =
      (await this.fromReplica(organisationId, id)) ?? (await this.fromPrimary(organisationId, id));
    if (loaded) this.remember(loaded);
    return loaded;
  }
}
