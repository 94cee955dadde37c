import {
  competitions,
  competitors,
  meets,
  notebook,
  observations,
  practice,
  type AthleteRow,
  type CompetitionRow,
  type CountingObservation,
  type Reads,
} from '#persistence';
import type { Observation } from '#technique';
import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { loadAll } from '../platform/competition/load-all.js';
import { Database } from '../platform/database/database.js';
import type { KnownThrow } from './findings/task.js';
import { practiceThrow, throwsOf, usualVariant, type MeetThrow } from './meet-throws.js';

/** Trials, not competitions. */
const REMEMBERED = 200_000;
/** Competitions whose journals are read together. */
const AT_ONCE = 50;

/** Everything an athlete threw, at meets and in practice, and what was seen of it. */
@Injectable()
export class HistoryService {
  private readonly known = new LRUCache<
    string,
    { readonly version: number; readonly throws: readonly MeetThrow[] }
  >({
    maxSize: REMEMBERED,
    sizeCalculation: ({ throws }) => 1 + throws.length,
  });

  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
  ) {}

  /** By day, occasion and order. */
  async throws({ organisationId, id }: AthleteRow): Promise<readonly KnownThrow[]> {
    return this.database.snapshot(async (at) => {
      const inMeets = await this.atMeets(at, organisationId, id);
      const rows = await practice.ofAthlete(at, organisationId, id);
      const practised = rows.flatMap((row) => practiceThrow(row, row.place) ?? []);
      const usual = new Map<string, KnownThrow['variant']>();
      const whole = inMeets.map(({ competitorId: _, ...one }): KnownThrow => {
        const variant = usual.get(one.event) ?? usualVariant(one.event, practised);
        usual.set(one.event, variant);
        return { ...one, variant };
      });
      return [...whole, ...practised].sort(
        (a, b) =>
          a.day - b.day || (a.occasion < b.occasion ? -1 : a.occasion > b.occasion ? 1 : a.round - b.round),
      );
    });
  }

  /** What was seen, by the ids of the throws; of trials that are not there nothing is said. */
  async observations({ organisationId, id }: AthleteRow): Promise<readonly Observation[]> {
    return this.database.snapshot(async (at) => {
      const inMeets = await this.atMeets(at, organisationId, id);
      const trials = new Map(
        inMeets.map((one) => [trialKey(one.occasion, one.competitorId, one.round), one.id]),
      );
      const rows = await observations.ofAthlete(at, organisationId, id);
      return rows.flatMap((row) => {
        const throwId =
          row.practiceThrowId ?? trials.get(trialKey(row.competitionId!, row.competitorId!, row.round!));
        return throwId === undefined ? [] : [observationOf(row, throwId)];
      });
    });
  }

  /** Another word whenever anything was added that the athlete's numbers rest on. */
  async version({ organisationId, id }: AthleteRow): Promise<string> {
    return this.database.read((at) => notebook.dataVersion(at, organisationId, id));
  }

  private async atMeets(at: Reads, organisationId: string, athleteId: string): Promise<readonly MeetThrow[]> {
    const lines = await competitors.ofAthlete(at, organisationId, athleteId);
    if (lines.length === 0) return [];
    const ids = [...new Set(lines.map(({ competitionId }) => competitionId))];
    const rows = await competitions.byIds(at, organisationId, ids);
    const found: MeetThrow[] = [];
    const missing: CompetitionRow[] = [];
    for (const row of rows) {
      const known = this.known.get(row.id) ?? this.atHand(row);
      if (known?.version === row.version) found.push(...known.throws);
      else missing.push(row);
    }
    const stages = await meets.byIds(at, organisationId, [...new Set(rows.map(({ meetId }) => meetId))]);
    const published = new Map(
      stages.filter((meet) => meet.publishedAt !== null).map((meet) => [meet.id, meet]),
    );
    const readable = missing.filter(({ meetId }) => published.has(meetId));
    for (let from = 0; from < readable.length; from += AT_ONCE) {
      for (const loaded of await loadAll(at, readable.slice(from, from + AT_ONCE), published)) {
        found.push(...this.remember(loaded.row, throwsOf(loaded)).throws);
      }
    }
    const hidden = new Set(rows.filter(({ meetId }) => !published.has(meetId)).map(({ id }) => id));
    return found.filter(({ athlete, occasion }) => athlete === athleteId && !hidden.has(occasion));
  }

  private atHand(row: CompetitionRow) {
    const loaded = this.memory.atHand(row.organisationId, row.id);
    return loaded?.row.version === row.version ? this.remember(row, throwsOf(loaded)) : undefined;
  }

  private remember({ id, version }: CompetitionRow, throws: readonly MeetThrow[]) {
    const entry = { version, throws };
    this.known.set(id, entry);
    return entry;
  }
}

function trialKey(competition: string, competitor: string, round: number): string {
  return `${competition} ${competitor} ${round}`;
}

function observationOf(row: CountingObservation, throwId: string): Observation {
  const { checklist, checklistVersion, scope } = row;
  return {
    ...{ id: row.id, throwId, observer: row.observerId, observedAt: row.observedAt, method: row.method },
    ...{ markKnown: row.markKnown, view: row.view, marks: row.marks, note: null },
    scope:
      scope === null
        ? { kind: 'noticed' }
        : checklist !== null && checklistVersion !== null
          ? { kind: 'checklist', name: checklist, version: checklistVersion, codes: scope }
          : { kind: 'codes', codes: scope },
  };
}
