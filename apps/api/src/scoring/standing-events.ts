import {
  briefs,
  competitions,
  type Brief,
  type CompetitionRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import type { MatchEvent } from '#rules';
import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { isWithheld } from '../platform/competition/visible.js';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { placesOfBrief, placesOfLoaded, type StandingPlaces } from '../platform/competition/places.js';

/** A competition at one version, as far as team scoring looks at it. */
export interface StandingEvent {
  readonly row: CompetitionRow;
  readonly isProvisional: boolean;
  readonly event: MatchEvent;
}

const REMEMBERED = 1000;
/** In so many parts a meet is read: while one is counted here, the database gathers the next. */
const PARTS = 3;

/**
 * What the competitions of a meet come to, each counted once a version. Those that have changed are read together:
 * a fixed number of statements, however many they are.
 */
@Injectable()
export class StandingEvents {
  private readonly known = new LRUCache<string, StandingEvent>({ max: REMEMBERED });

  constructor(private readonly memory: CompetitionMemory) {}

  /** The finals of a meet by time, as they stand. `at` must be one moment. */
  async of(at: Reads, { organisationId, id: meetId }: MeetRow): Promise<StandingEvent[]> {
    const rows = (await competitions.ofMeet(at, organisationId, meetId)).filter(
      // What is withheld from anybody would show in the sum.
      (row) => row.stage === 'final' && !isWithheld(row),
    );
    const events = new Map<string, StandingEvent>();
    const take = (row: CompetitionRow, places: StandingPlaces): void => {
      const event = standingEvent(row, places);
      events.set(row.id, event);
      this.known.set(row.id, event);
    };
    const unknown: CompetitionRow[] = [];
    for (const row of rows) {
      const known = this.known.get(row.id);
      const loaded = this.memory.atHand(organisationId, row.id);
      if (known?.row.version === row.version) events.set(row.id, known);
      else if (loaded?.row.version === row.version) take(row, placesOfLoaded(loaded));
      else unknown.push(row);
    }
    const byId = new Map(unknown.map((row) => [row.id, row]));
    await readInParts(at, organisationId, [...byId.keys()], (brief) => {
      const row = byId.get(brief.competitionId)!;
      take(row, placesOfBrief(row, brief));
    });
    return rows.map(({ id }) => events.get(id)!);
  }
}

/** Asks for the next part before the one that has come is counted. */
async function readInParts(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
  count: (brief: Brief) => void,
): Promise<void> {
  const size = Math.ceil(ids.length / PARTS);
  const readFrom = (from: number): Promise<Brief[]> | null =>
    from < ids.length ? briefs.read(at, organisationId, ids.slice(from, from + size)) : null;
  let coming = readFrom(0);
  for (let from = size; coming; from += size) {
    const read = await coming;
    coming = readFrom(from);
    // Should counting fail, what is still coming is nobody's any more.
    coming?.catch(() => undefined);
    read.forEach(count);
  }
}

function standingEvent(row: CompetitionRow, { rows, signedOff }: StandingPlaces): StandingEvent {
  const { categorySex: sex, categoryAge: age } = row;
  return { row, isProvisional: !signedOff, event: { isRelay: false, sex, age, rows } };
}
