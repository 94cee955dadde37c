import { athletes, notebook, type AthleteRow, type NotebookEntryRow } from '#persistence';
import { poolEffects, type Observation, type TechniqueEvent } from '#technique';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import type { Identity } from '../platform/identity/identity.js';
import { isChild, today } from '../technique/age.js';
import { checklistsOf, focusesOf, notebookAthlete } from '../technique/notebook-view.js';
import { AnalyticsService, type Analysed } from './analytics.service.js';
import { refusedOf } from './findings/answers.js';
import { dateOf, dayOf, type KnownThrow } from './findings/task.js';
import { HistoryService } from './history.service.js';
import type { PointToAssess, SquadFault, SquadLine } from './squad.types.js';

const FOUR_WEEKS = 28;
const TWO_WEEKS = 14;
/** How long a question waits for athletes who have not been analysed yet; then it says how far it has come. */
const PATIENCE_MS = 2_000;

/** The athletes whom a coach follows, together. */
@Injectable()
export class SquadService {
  constructor(
    private readonly database: Database,
    private readonly history: HistoryService,
    private readonly analytics: AnalyticsService,
  ) {}

  async overview(day: string, viewer: Identity): Promise<SquadLine[]> {
    const rows = await this.coached(viewer);
    const entries = await this.database.read((at) =>
      notebook.ofAthletes(
        at,
        viewer.organisationId,
        rows.map(({ id }) => id),
      ),
    );
    const lines: SquadLine[] = [];
    for (const row of rows) {
      const { throws, observations: observed } = await this.history.whole(row);
      const own = entries.filter(({ athleteId }) => athleteId === row.id);
      lines.push({ athlete: notebookAthlete(row, viewer, day), ...lineOf(throws, observed, own, day) });
    }
    return lines;
  }

  /** Partial pooling of a point over athletes; own numbers beside it. */
  async fault(event: TechniqueEvent, code: string, viewer: Identity): Promise<SquadFault> {
    const rows = await this.coached(viewer);
    const whole = rows.filter(({ birthDate }) => !isChild(birthDate, today()));
    const found = await this.analysed(whole, event);
    const effects = found.flatMap(({ row, analysed }) => {
      const { analysis } = analysed;
      const fault = analysis.kind === 'whole' ? analysis.faults.find((one) => one.code === code) : undefined;
      return fault ? [{ row, own: fault.distance }] : [];
    });
    const estimated = effects.flatMap(({ row, own }) =>
      own.beta !== null && own.standardError !== null
        ? [{ athlete: row.id, effect: own.beta, error: own.standardError }]
        : [],
    );
    const pooling = poolEffects(estimated);
    const pooled = new Map(
      pooling.kind === 'answer' ? pooling.athletes.map((one) => [one.athlete, one]) : [],
    );
    const mean = pooling.kind === 'answer' ? inPercent(pooling.mean, pooling.meanError) : null;
    return {
      ...{ code, done: found.length, total: whole.length, childrenLeftOut: rows.length - whole.length },
      meanPercent: mean?.percent ?? null,
      meanInterval: mean?.interval ?? null,
      refused: pooling.kind === 'answer' ? null : refusedOf(pooling),
      athletes: effects.map(({ row, own }) => {
        const one = pooled.get(row.id);
        const drawn = one ? inPercent(one.pooled, one.pooledError) : null;
        return {
          athlete: notebookAthlete(row, viewer),
          ...{ own, pooledPercent: drawn?.percent ?? null, pooledInterval: drawn?.interval ?? null },
        };
      }),
    };
  }

  /** Those whose analysis is there within some seconds; the others go on being made. */
  private async analysed(
    rows: readonly AthleteRow[],
    event: TechniqueEvent,
  ): Promise<{ readonly row: AthleteRow; readonly analysed: Analysed }[]> {
    const filter = { event, implementGrams: null, from: null, to: null, thrownIn: null };
    const found = new Map<string, Analysed>();
    const all = rows.map(async (row) => {
      found.set(row.id, await this.analytics.analysis(row, filter));
    });
    let timer: NodeJS.Timeout | undefined;
    const patience = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, PATIENCE_MS);
    });
    // One that fails is not done; whoever asks for it alone hears why.
    await Promise.race([Promise.allSettled(all), patience]);
    clearTimeout(timer);
    for (const one of all) one.catch(() => undefined);
    return rows.flatMap((row) => {
      const analysed = found.get(row.id);
      return analysed ? [{ row, analysed }] : [];
    });
  }

  private async coached(viewer: Identity): Promise<AthleteRow[]> {
    const ids = viewer.followed().filter((id) => viewer.coaches(id));
    const rows = await this.database.read((at) => athletes.byIds(at, viewer.organisationId, ids));
    const name = ({ familyName, givenName }: AthleteRow): string => `${familyName} ${givenName}`;
    return [...rows].sort((a, b) => name(a).localeCompare(name(b)) || (a.id < b.id ? -1 : 1));
  }
}

/** Two standard errors either way. */
function inPercent(beta: number, error: number) {
  const percent = (log: number): number => 100 * Math.expm1(log);
  const reach = 1.96 * error;
  return {
    percent: percent(beta),
    interval: { low: percent(beta - reach), high: percent(beta + reach), level: 0.95 },
  };
}

function lineOf(
  throws: readonly KnownThrow[],
  observed: readonly Observation[],
  entries: readonly NotebookEntryRow[],
  day: string,
): Omit<SquadLine, 'athlete'> {
  const dates = new Map(throws.map(({ id, onDate }) => [id, onDate]));
  const since = dateOf(dayOf(day) - FOUR_WEEKS + 1);
  const before = throws.filter(({ onDate }) => onDate <= day);
  const lastThrowOn = before.at(-1)?.onDate ?? null;
  const looks = observed.flatMap(({ throwId, scope }) => {
    const onDate = dates.get(throwId);
    return onDate !== undefined && onDate <= day ? [{ onDate, scope }] : [];
  });
  const lastObservedOn = latest(looks.map(({ onDate }) => onDate));
  const points = wantedPoints(entries, day).map(({ event, code }): PointToAssess => {
    const of = looks.filter(({ scope }) => scope.kind !== 'noticed' && scope.codes.includes(code));
    return { event, code, lastLookedFor: latest(of.map(({ onDate }) => onDate)) };
  });
  const dueFrom = dateOf(dayOf(day) - TWO_WEEKS);
  return {
    ...{ lastThrowOn, lastObservedOn },
    throwsInFourWeeks: before.filter(({ onDate, outcome }) => onDate >= since && outcome !== 'pass').length,
    isDue:
      lastThrowOn !== null &&
      (lastObservedOn === null || (lastObservedOn <= dueFrom && lastThrowOn > lastObservedOn)),
    notAssessed: points.filter(({ lastLookedFor }) => lastLookedFor === null || lastLookedFor < since),
  };
}

/** What is worked on, or on a checklist. */
function wantedPoints(
  entries: readonly NotebookEntryRow[],
  day: string,
): Omit<PointToAssess, 'lastLookedFor'>[] {
  const goesOn = focusesOf(entries).filter(({ from, to }) => from <= day && (to === null || to >= day));
  const all = [
    ...goesOn.map(({ event, code }) => ({ event, code })),
    ...checklistsOf(entries).flatMap(({ event, codes }) => codes.map((code) => ({ event, code }))),
  ];
  return all.filter((one, at) => all.findIndex(({ code }) => code === one.code) === at);
}

function latest(dates: readonly string[]): string | null {
  return dates.reduce<string | null>((most, date) => (most === null || date > most ? date : most), null);
}
