import { notebook, PageError, type AthleteRow, type NotebookEntryRow, type Page } from '#persistence';
import type { EventCode } from '#rules';
import { FIRST_DRAWS, FULL_DRAWS, type TechniqueEvent } from '#technique';
import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { Database } from '../platform/database/database.js';
import { isChild, isGrowing, today } from '../technique/age.js';
import { focusesOf, stagesOf } from '../technique/notebook-view.js';
import { VocabularyService } from '../technique/vocabulary.service.js';
import type { Analysis } from './findings/analyse.js';
import type { AnalysisTask, KnownThrow } from './findings/task.js';
import { HistoryService } from './history.service.js';
import { outlookOf, type Outlook, type OutlookQuestion } from './outlook.js';
import { WorkerPools } from './worker-pools.js';

/** Which throws an analysis rests on. Both days are included. */
export interface AnalysisFilter {
  readonly event: TechniqueEvent;
  readonly implementGrams: number | null;
  readonly from: string | null;
  readonly to: string | null;
  readonly thrownIn: KnownThrow['thrownIn'] | null;
}

/** The same for a history, which may be of all events. */
export interface HistoryFilter extends Omit<AnalysisFilter, 'event'> {
  readonly event: EventCode | null;
}

export interface Analysed {
  readonly analysis: Analysis;
  readonly dataVersion: string;
  /** The throws that it rests on. */
  readonly throws: readonly KnownThrow[];
}

const REMEMBERED = 1_000;

/**
 * What the data of an athlete say. A first answer is given at once and a thorough one follows; both are kept until
 * anything is added that they rest on.
 */
@Injectable()
export class AnalyticsService {
  private readonly known = new LRUCache<string, Analysed>({ max: REMEMBERED });
  private readonly underWay = new Map<string, Promise<Analysed>>();

  constructor(
    private readonly database: Database,
    private readonly history: HistoryService,
    private readonly vocabularies: VocabularyService,
    private readonly pools: WorkerPools,
  ) {}

  async analysis(athlete: AthleteRow, filter: AnalysisFilter): Promise<Analysed> {
    const dataVersion = await this.history.version(athlete);
    const key = keyOf(athlete, filter);
    const known = this.known.get(key);
    if (known?.dataVersion === dataVersion) return known;
    const name = `${key} ${dataVersion}`;
    const under = this.underWay.get(name);
    if (under) return under;
    const working = this.first(athlete, filter, dataVersion).finally(() => this.underWay.delete(name));
    this.underWay.set(name, working);
    return working;
  }

  /** What is known already, whatever was added since; null: nothing. */
  atHand(athlete: AthleteRow, filter: AnalysisFilter): Analysed | null {
    return this.known.get(keyOf(athlete, filter)) ?? null;
  }

  /** A page of the history, the newest first; a cursor is the id of a throw. Throws PageError for another one. */
  async page(
    athlete: AthleteRow,
    filter: HistoryFilter,
    { first, after }: { readonly first: number; readonly after?: string | null },
  ): Promise<Page<KnownThrow>> {
    const all = (await this.history.throws(athlete)).filter((one) => fits(one, filter)).reverse();
    const begin = typeof after === 'string' ? all.findIndex(({ id }) => id === after) + 1 : 0;
    if (typeof after === 'string' && begin === 0)
      throw new PageError('after', 'after is no cursor of this list');
    const rows = all.slice(begin, begin + first);
    return { edges: rows.map((row) => ({ row, cursor: row.id })), hasNextPage: begin + first < all.length };
  }

  async outlook(athlete: AthleteRow, filter: AnalysisFilter, question: OutlookQuestion): Promise<Outlook> {
    const throws = (await this.history.throws(athlete)).filter((one) => fits(one, filter));
    const { vocabulary } = await this.vocabularies.current(athlete.organisationId);
    return outlookOf(throws, vocabulary, question);
  }

  private async first(athlete: AthleteRow, filter: AnalysisFilter, dataVersion: string): Promise<Analysed> {
    const task = await this.task(athlete, filter, dataVersion);
    const analysis = await this.pools.first(task);
    const first = { analysis, dataVersion, throws: task.throws };
    this.known.set(keyOf(athlete, filter), first);
    if (analysis.isFirstAnswer) this.follow(athlete, filter, task, dataVersion);
    return first;
  }

  /** The thorough answer takes the place of the first, unless something was added meanwhile. */
  private follow(athlete: AthleteRow, filter: AnalysisFilter, task: AnalysisTask, dataVersion: string): void {
    const key = keyOf(athlete, filter);
    const done = this.pools.full({ ...task, draws: FULL_DRAWS }).then((analysis) => {
      if (this.known.peek(key)?.dataVersion === dataVersion)
        this.known.set(key, { analysis, dataVersion, throws: task.throws });
    });
    // The server is being stopped, or the queue is full: the first answer stands and says that it is one.
    done.catch(() => undefined);
  }

  private async task(
    athlete: AthleteRow,
    filter: AnalysisFilter,
    dataVersion: string,
  ): Promise<AnalysisTask> {
    const { organisationId, id } = athlete;
    const [{ throws, observations }, { vocabulary }, entries] = await Promise.all([
      this.history.whole(athlete),
      this.vocabularies.current(organisationId),
      this.entries(athlete),
    ]);
    const used = throws.filter((one) => fits(one, filter));
    const ids = new Set(used.map((one) => one.id));
    const day = today();
    return {
      ...{ throws: used, vocabulary, event: filter.event, draws: FIRST_DRAWS },
      observations: observations.filter(({ throwId }) => ids.has(throwId)),
      stage: stagesOf(entries).find(({ event }) => event === filter.event)?.stage ?? null,
      growing: isGrowing(athlete.birthDate, day),
      child: isChild(athlete.birthDate, day),
      focuses: focusesOf(entries).filter(({ event }) => event === filter.event),
      seed: [id, filter.event, dataVersion],
      // Of the last throw, so that the same data give the same numbers tomorrow.
      today: used.at(-1)?.onDate ?? day,
    };
  }

  private entries({ organisationId, id }: AthleteRow): Promise<NotebookEntryRow[]> {
    return this.database.read((at) => notebook.ofAthletes(at, organisationId, [id]));
  }
}

export function fits(one: KnownThrow, filter: HistoryFilter): boolean {
  return (
    (filter.event === null || one.event === filter.event) &&
    (filter.implementGrams === null || one.massG === filter.implementGrams) &&
    (filter.from === null || one.onDate >= filter.from) &&
    (filter.to === null || one.onDate <= filter.to) &&
    (filter.thrownIn === null || one.thrownIn === filter.thrownIn)
  );
}

/** Who turns fourteen, or comes of age, is analysed anew. */
function keyOf({ id, birthDate }: AthleteRow, filter: AnalysisFilter): string {
  const day = today();
  const { event, implementGrams, from, to, thrownIn } = filter;
  const age = [isChild(birthDate, day), isGrowing(birthDate, day)];
  return [id, event, implementGrams, from, to, thrownIn, ...age].join(' ');
}
