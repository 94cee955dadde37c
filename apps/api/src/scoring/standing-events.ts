import {
  competitions,
  journal as journalStore,
  type CompetitionRow,
  type FoldedRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import { placedRows, type MatchEvent } from '#rules';
import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { resultDocumentOf } from '../platform/competition/documents.js';
import { fold } from '../platform/competition/kinds.js';
import { itemOf, type LoadedCompetition } from '../platform/competition/loaded.js';
import { rostersOf } from '../platform/roster/roster.js';

/** A competition at one version, as far as team scoring looks at it. */
export interface StandingEvent {
  readonly row: CompetitionRow;
  readonly isProvisional: boolean;
  readonly event: MatchEvent;
}

const REMEMBERED = 1000;

/**
 * What the competitions of a meet come to, each counted once a version. Those that have changed are read together:
 * a fixed number of statements, however many they are.
 */
@Injectable()
export class StandingEvents {
  private readonly known = new LRUCache<string, StandingEvent>({ max: REMEMBERED });

  constructor(private readonly memory: CompetitionMemory) {}

  /** The finals of a meet by time, as they stand. `at` must be one moment. */
  async of(at: Reads, meet: MeetRow): Promise<StandingEvent[]> {
    const rows = (await competitions.ofMeet(at, meet.organisationId, meet.id)).filter(
      ({ stage }) => stage === 'final',
    );
    const events = new Map<string, StandingEvent>();
    for (const { id, version } of rows) {
      const known = this.known.get(id);
      if (known?.row.version === version) events.set(id, known);
    }
    const changed = rows.filter(({ id }) => !events.has(id));
    for (const loaded of await loadAll(at, meet, changed)) {
      this.memory.remember(loaded);
      const event = standingEvent(loaded);
      events.set(loaded.row.id, event);
      this.known.set(loaded.row.id, event);
    }
    return rows.map(({ id }) => events.get(id)!);
  }
}

async function loadAll(
  at: Reads,
  meet: MeetRow,
  rows: readonly CompetitionRow[],
): Promise<LoadedCompetition[]> {
  if (rows.length === 0) return [];
  const rosters = await rostersOf(
    at,
    rows.map((competition) => ({ competition, meet })),
  );
  const ids = rows.map(({ id }) => id);
  const entries = new Map<string, FoldedRow[]>(ids.map((id) => [id, []]));
  for (const entry of await journalStore.readAll(at, meet.organisationId, ids)) {
    entries.get(entry.competitionId)?.push(entry);
  }
  return rows.map((row, index) => {
    const [roster, journal] = [rosters[index]!, entries.get(row.id) ?? []];
    const latest = journal.at(-1)?.recordedAt;
    const changedAt = latest === undefined ? null : new Date(latest);
    return { ...fold(row, roster, journal.map(itemOf)), row, meet, roster, changedAt };
  });
}

/** A guest is in the competition and not in the match. */
function standingEvent(loaded: LoadedCompetition): StandingEvent {
  const { row, roster, state } = loaded;
  const members = roster.map(({ competitor: { bib, guest }, club }) => ({ bib, club: guest ? null : club }));
  return {
    row,
    isProvisional: !state.signedOff,
    event: {
      isRelay: false,
      sex: row.categorySex,
      age: row.categoryAge,
      rows: placedRows(resultDocumentOf(loaded).results ?? [], members),
    },
  };
}
