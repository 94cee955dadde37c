import {
  competitions,
  competitors,
  meets,
  notebook,
  observations,
  practice,
  type AthleteRow,
  type CountingObservation,
  type CountingThrow,
  type EnteredCompetition,
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
    const [rows, entered] = await this.database.read(async (at) => [
      await practice.ofAthlete(at, organisationId, id),
      await competitors.publishedOfAthlete(at, organisationId, id),
    ]);
    return inOrder(rows, await this.atMeets(organisationId, id, entered));
  }

  /** The same with what was seen, by the ids of the throws; of trials that are not there nothing is said. */
  async whole({ organisationId, id }: AthleteRow): Promise<{
    readonly throws: readonly KnownThrow[];
    readonly observations: readonly Observation[];
  }> {
    const [rows, seen, entered] = await this.database.read(async (at) => [
      await practice.ofAthlete(at, organisationId, id),
      await observations.ofAthlete(at, organisationId, id),
      await competitors.publishedOfAthlete(at, organisationId, id),
    ]);
    const inMeets = await this.atMeets(organisationId, id, entered);
    const trials = new Map(
      inMeets.map((one) => [trialKey(one.occasion, one.competitorId, one.round), one.id]),
    );
    return {
      throws: inOrder(rows, inMeets),
      observations: seen.flatMap((row) => {
        const throwId =
          row.practiceThrowId ?? trials.get(trialKey(row.competitionId!, row.competitorId!, row.round!));
        return throwId === undefined ? [] : [observationOf(row, throwId)];
      }),
    };
  }

  /** Another word whenever anything was added that the athlete's numbers rest on. */
  async version({ organisationId, id }: AthleteRow): Promise<string> {
    return this.database.read((at) => notebook.dataVersion(at, organisationId, id));
  }

  private async atMeets(
    organisationId: string,
    athleteId: string,
    entered: readonly EnteredCompetition[],
  ): Promise<readonly MeetThrow[]> {
    const found: MeetThrow[] = [];
    const missing: string[] = [];
    for (const one of entered) {
      const known = this.known.get(one.id) ?? this.atHand(organisationId, one);
      if (known?.version === one.version) found.push(...known.throws);
      else missing.push(one.id);
    }
    for (let from = 0; from < missing.length; from += AT_ONCE) {
      found.push(...(await this.read(organisationId, missing.slice(from, from + AT_ONCE))));
    }
    return found.filter(({ athlete }) => athlete === athleteId);
  }

  private async read(organisationId: string, ids: readonly string[]): Promise<MeetThrow[]> {
    return this.database.snapshot(async (at) => {
      const rows = await competitions.byIds(at, organisationId, ids);
      const meetIds = [...new Set(rows.map(({ meetId }) => meetId))];
      const stages = new Map((await meets.byIds(at, organisationId, meetIds)).map((meet) => [meet.id, meet]));
      const loaded = rows.length > 0 ? await loadAll(at, rows, stages) : [];
      return loaded.flatMap((one) => this.remember(one.row, throwsOf(one)).throws);
    });
  }

  private atHand(organisationId: string, entered: EnteredCompetition) {
    const loaded = this.memory.atHand(organisationId, entered.id);
    if (loaded?.row.version !== entered.version) return undefined;
    return this.remember(entered, throwsOf(loaded));
  }

  private remember({ id, version }: EnteredCompetition, throws: readonly MeetThrow[]) {
    const entry = { version, throws };
    this.known.set(id, entry);
    return entry;
  }
}

function inOrder(rows: readonly CountingThrow[], inMeets: readonly MeetThrow[]): readonly KnownThrow[] {
  const practised = rows.flatMap((row) => practiceThrow(row, row.place) ?? []);
  if (inMeets.length === 0) return practised;
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
