import { combinedEvents, meets, type CombinedEventRow, type MeetRow, type Reads } from '#persistence';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { isWithheld } from '../platform/competition/visible.js';
import { Database } from '../platform/database/database.js';
import type { Capacity, Identity } from '../platform/identity/identity.js';
import { loadCombined, type LoadedCombined } from './combined-loaded.js';

/** Combined events as they are read: who may see them, and what they come to. */
@Injectable()
export class CombinedEventsService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
  ) {}

  /** Null: not there, or not published and not the viewer's. */
  async find(id: string, viewer: Identity): Promise<CombinedEventRow | null> {
    return this.database.read(async (at) => {
      const row = await combinedEvents.find(at, viewer.organisationId, id);
      const meet = row && (await meets.find(at, row.organisationId, row.meetId));
      if (!meet || meet.publishedAt !== null) return row;
      if (viewer.mayDirect(meet.id)) return row;
      const loaded = await this.load(at, [row]);
      return capacityIn(viewer, loaded[0]!) === null ? null : row;
    });
  }

  /** For each of these meets its combined events by title. One statement. */
  async ofMeets(of: readonly MeetRow[]): Promise<CombinedEventRow[][]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = of.map(({ id }) => id);
    const rows = await this.database.read((at) => combinedEvents.ofMeets(at, organisationId, ids));
    return of.map(({ id }) => rows.filter(({ meetId }) => meetId === id));
  }

  /** For each of these combined events what it comes to now, all at one moment. */
  async loadAll(rows: readonly CombinedEventRow[]): Promise<LoadedCombined[]> {
    return this.database.snapshot(async (at) => {
      const fresh: CombinedEventRow[] = [];
      for (const { organisationId, id } of rows) {
        const row = await combinedEvents.find(at, organisationId, id);
        if (!row) throw new Error(`Combined event ${id} went away while it was read.`);
        fresh.push(row);
      }
      return this.load(at, fresh);
    });
  }

  /** The same in whatever moment `at` is. */
  load(at: Reads, rows: readonly CombinedEventRow[]): Promise<LoadedCombined[]> {
    return loadCombined(at, rows, this.memory);
  }

  /** What stands in a meet, for whoever counts it on. `at` must be one moment. */
  async standing(at: Reads, { organisationId, id }: MeetRow): Promise<LoadedCombined[]> {
    const loaded = await this.load(at, await combinedEvents.ofMeets(at, organisationId, [id]));
    // What is withheld from anybody would show in the sum.
    return loaded.filter(({ linked }) => ![...linked.values()].some(({ row }) => isWithheld(row)));
  }
}

/**
 * With which right somebody acts on a combined event: the meet's directors and referees, and the officials of the
 * competitions that it is counted from.
 */
export function capacityIn(
  viewer: Identity,
  { row, linked }: Pick<LoadedCombined, 'row' | 'linked'>,
): Capacity | null {
  if (viewer.has('director', row.meetId)) return 'director';
  if (viewer.has('referee', row.meetId)) return 'referee';
  return [...linked.values()].some((competition) => viewer.mayOfficiate(competition.row)) ? 'official' : null;
}

/** Whether somebody works at this combined event, and so sees whole names and the journal. */
export function isCrew(viewer: Identity, loaded: Pick<LoadedCombined, 'row' | 'linked'>): boolean {
  return viewer.mayDirect(loaded.row.meetId) || capacityIn(viewer, loaded) !== null;
}
