import {
  athletes,
  clubs as clubStore,
  recordDecisions,
  pastResults,
  recordScope,
  startingMarks,
  type AthleteRow,
  type CompetitionRow,
  type ListOwners,
  type MeetRow,
  type PastResultRow,
  type Reads,
  type RecordDecisionRow,
  type StartingMarkRow,
} from '#persistence';
import {
  formatWind,
  parseWind,
  recordBook,
  type EventCode,
  type Performance,
  type Ratification,
  type RecordBook,
  type RecordTerms,
} from '#rules';
import { Injectable } from '@nestjs/common';
import { maySee } from '../platform/competition/visible.js';
import type { Identity } from '../platform/identity/identity.js';
import type { RosterLine } from '../platform/roster/roster.js';
import { meetSeriesOf } from './meet-series.js';
import { MarkMemory } from './standing-marks.js';

/** Where a mark comes from. */
export type Origin =
  | {
      readonly kind: 'attempt';
      readonly row: CompetitionRow;
      readonly meet: MeetRow;
      readonly line: RosterLine;
    }
  | {
      readonly kind: 'starting mark';
      readonly row: StartingMarkRow;
      readonly athlete: AthleteRow | null;
    }
  | {
      readonly kind: 'past result';
      readonly row: PastResultRow;
      readonly athlete: AthleteRow;
    };

export interface Evident {
  readonly performance: Performance;
  readonly origin: Origin;
}

/** Everything that lists of certain owners are made of, at one moment and as far as somebody may see it. */
export interface Evidence {
  /** By the id of the performance. */
  readonly marks: ReadonlyMap<string, Evident>;
  /** Of each mark and kind the last. */
  readonly decisions: readonly RecordDecisionRow[];
  readonly clubNames: ReadonlyMap<string, string>;
}

/** Reads what lists are made of. */
@Injectable()
export class EvidenceReader {
  constructor(private readonly memory: MarkMemory) {}

  /**
   * `at` must be one moment. Meets are taken with those of the same name in other years. A fixed number of statements
   * beside the competitions that have changed since they were last read.
   */
  async read(at: Reads, viewer: Identity, of: ListOwners, event: EventCode | null = null): Promise<Evidence> {
    const { organisationId } = viewer;
    const meets = new Map((await recordScope.allMeets(at, organisationId)).map((meet) => [meet.id, meet]));
    const owners = { ...of, meets: withOtherYears(of.meets, meets) };
    const all = await recordScope.competitionsWith(at, organisationId, owners, event);
    const rows = all.filter((row) => maySee(meets.get(row.meetId)!, row, viewer));
    const standing = await this.memory.of(at, rows, meets);
    const entered = (await startingMarks.counting(at, organisationId, owners)).filter(
      (row) => event === null || row.event === event,
    );
    const past = (await pastResults.counting(at, organisationId, of.athletes)).filter(
      (row) => event === null || row.event === event,
    );
    const holders = await holdersOf(at, organisationId, [...entered, ...past]);
    const made = standing.flatMap(({ row, meet, marks }) =>
      marks.map(({ performance, line }): Evident => {
        return { performance, origin: { kind: 'attempt', row, meet, line } };
      }),
    );
    const known = entered.map((row): Evident => {
      const athlete = (row.athleteId !== null && holders.get(row.athleteId)) || null;
      return {
        performance: startingPerformance(row, meets),
        origin: { kind: 'starting mark', row, athlete },
      };
    });
    const told = past.map((row): Evident => {
      const athlete = holders.get(row.athleteId)!;
      return { performance: pastPerformance(row, athlete), origin: { kind: 'past result', row, athlete } };
    });
    const marks = new Map([...known, ...told, ...made].map((one) => [one.performance.id, one]));
    const decided = await recordDecisions.ofCompetitions(
      at,
      organisationId,
      rows.map(({ id }) => id),
    );
    return {
      marks,
      decisions: lastOf(decided),
      clubNames: await clubNamesOf(at, organisationId, marks.values()),
    };
  }
}

/** The book of the evidence. A decision about a mark that is another one since does not count. */
export function bookOf({ marks, decisions }: Evidence, terms: RecordTerms): RecordBook {
  const performances = [...marks.values()].map(({ performance }) => performance);
  const ratifications = decisions.flatMap((row): Ratification[] => {
    const mark = marks.get(row.attemptId);
    if (row.decision === 'withdrawn' || !mark || !isAbout(row, mark)) return [];
    const { attemptId: performance, kind, decision, reason } = row;
    return [{ performance, kind, decision, reason }];
  });
  return recordBook(terms, performances, ratifications);
}

/** Whether a mark is still the one that was decided about: of the same competitor, wind and implement. */
export function isAbout(row: RecordDecisionRow, { performance, origin }: Evident): boolean {
  return (
    origin.kind === 'attempt' &&
    origin.line.competitor.id === row.competitorId &&
    performance.mark === row.mark &&
    windText(performance) === row.wind &&
    performance.implementGrams === row.implementGrams
  );
}

export function windText({ wind }: Performance): string | null {
  return wind === null || wind === 'pending' ? wind : formatWind(wind);
}

function startingPerformance(row: StartingMarkRow, meets: ReadonlyMap<string, MeetRow>): Performance {
  const meet = row.meetId === null ? null : meets.get(row.meetId)!;
  return {
    id: row.id,
    competition: null,
    event: row.event,
    unit: row.unit,
    mark: row.mark,
    wind: row.wind === null ? null : parseWind(row.wind),
    indoor: row.indoor,
    implementGrams: row.implementGrams,
    onDate: row.onDate,
    order: -1,
    athlete: row.athleteId,
    club: row.clubId,
    meet: meet && meetSeriesOf(meet.name),
    sex: row.sex,
    ages: [row.age],
  };
}

/** It stands among the athlete's own bests alone: for which club, or in which lists of a meet, nobody has said. */
function pastPerformance(row: PastResultRow, athlete: AthleteRow): Performance {
  const { id, event, unit, mark, wind, indoor, implementGrams, onDate, athleteId } = row;
  return {
    ...{ id, competition: null, event, unit, mark, wind: wind === null ? null : parseWind(wind), indoor },
    ...{ implementGrams, onDate, order: -1, athlete: athleteId, club: null, meet: null, sex: athlete.sex },
    ages: [],
  };
}

function withOtherYears(ids: readonly string[], meets: ReadonlyMap<string, MeetRow>): string[] {
  const series = new Set(ids.flatMap((id) => meets.get(id) ?? []).map(({ name }) => meetSeriesOf(name)));
  return [...meets.values()].filter(({ name }) => series.has(meetSeriesOf(name))).map(({ id }) => id);
}

function lastOf(decided: readonly RecordDecisionRow[]): RecordDecisionRow[] {
  return [...new Map(decided.map((row) => [`${row.attemptId} ${row.kind}`, row])).values()];
}

async function holdersOf(
  at: Reads,
  organisationId: string,
  of: readonly { readonly athleteId: string | null }[],
): Promise<ReadonlyMap<string, AthleteRow>> {
  const ids = [...new Set(of.flatMap(({ athleteId }) => athleteId ?? []))];
  const rows = ids.length > 0 ? await athletes.byIds(at, organisationId, ids) : [];
  return new Map(rows.map((row) => [row.id, row]));
}

async function clubNamesOf(
  at: Reads,
  organisationId: string,
  marks: Iterable<Evident>,
): Promise<ReadonlyMap<string, string>> {
  const ids = [...new Set([...marks].flatMap(({ performance }) => performance.club ?? []))];
  const rows = ids.length > 0 ? await clubStore.byIds(at, organisationId, ids) : [];
  return new Map(rows.map(({ id, name }) => [id, name]));
}
