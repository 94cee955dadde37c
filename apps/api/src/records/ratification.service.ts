import {
  competitions,
  inspections,
  recordDecisions,
  violationOf,
  type CompetitionRow,
  type MeetRow,
  type NewRecordDecision,
  type Reads,
  type RecordDecisionRow,
  type Tx,
} from '#persistence';
import {
  formatMark,
  inForce,
  ratificationProblems,
  recheckOf,
  recordTerms,
  type Ratification,
  type RatificationProblem,
  type Recheck,
} from '#rules';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import { forbidden } from '../platform/errors/api-error.js';
import { ID_REUSED, notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import type { Capacity, Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { bookOf, EvidenceReader, isAbout, windText, type Evident } from './evidence.js';
import type { RecordRatifyInput } from './ratification.inputs.js';
import { marksOf } from './standing-marks.js';

export type Decided =
  | { readonly row: RecordDecisionRow; readonly competition: CompetitionRow; readonly replayed: boolean }
  | { readonly refusals: readonly UserError[] };

/** A decision, and whether it is the last and still about the mark as it stands. */
export interface DecisionShown {
  readonly row: RecordDecisionRow;
  readonly holds: boolean;
}

/** What is being decided about. */
interface Case {
  readonly input: RecordRatifyInput;
  readonly loaded: LoadedCompetition;
  /** `null`: no such mark stands. */
  readonly mark: Evident | null;
  /** All earlier decisions about it of the kind, the last at the end. */
  readonly before: readonly RecordDecisionRow[];
  readonly kind: Ratification['kind'];
  readonly recheck: Recheck | null;
}

/** Decides about marks as records: rows that are only added, under the lock of the competition. */
@Injectable()
export class RatificationService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
    private readonly reader: EvidenceReader,
    private readonly changes: CompetitionChanges,
  ) {}

  /** Ratifies, declines or takes a decision back. Throws UNAUTHENTICATED or FORBIDDEN for all but referee and director. */
  async decide(input: RecordRatifyInput, viewer: Identity): Promise<Decided> {
    const decided = await this.store(input, viewer);
    if ('row' in decided && !decided.replayed) {
      const { id: competitionId, version } = decided.competition;
      this.changes.announce({ competitionId, version });
    }
    return decided;
  }

  /** Everything that was decided about marks of a competition, in the order of deciding. */
  async of(row: CompetitionRow): Promise<DecisionShown[]> {
    const { organisationId, id } = row;
    const loaded = await this.memory.current(organisationId, id);
    if (!loaded) return [];
    const rows = await this.database.read((at) => recordDecisions.ofCompetitions(at, organisationId, [id]));
    const marks = new Map(marksOf(loaded).map((mark) => [mark.performance.id, evident(loaded, mark)]));
    const last = new Map(rows.map((one) => [`${one.attemptId} ${one.kind}`, one.id]));
    return rows
      .toSorted((a, b) => (a.decidedAt < b.decidedAt ? -1 : 1))
      .map((one) => {
        const mark = marks.get(one.attemptId);
        const isLast = last.get(`${one.attemptId} ${one.kind}`) === one.id;
        return { row: one, holds: isLast && one.decision !== 'withdrawn' && !!mark && isAbout(one, mark) };
      });
  }

  private async store(input: RecordRatifyInput, viewer: Identity): Promise<Decided> {
    try {
      return await this.database.write((tx) => this.locked(tx, input, viewer));
    } catch (error) {
      // Another competition has a decision of that id: only the database sees all of them at once.
      if (violationOf(error)?.constraint === 'record_decision_pkey') return { refusals: [ID_REUSED] };
      throw error;
    }
  }

  private async locked(tx: Tx, input: RecordRatifyInput, viewer: Identity): Promise<Decided> {
    const { organisationId } = viewer;
    const competition = await competitions.lock(tx, organisationId, input.competitionId);
    if (!competition) return { refusals: [notFound('competition', ['competitionId'])] };
    const capacity = viewer.requireCapacity(competition);
    if (capacity === 'official')
      throw forbidden('Only a referee or a director of the meet decides about records.');
    const there = input.id ? await recordDecisions.find(tx, organisationId, input.id) : null;
    if (there) {
      return isSame(there, input, competition)
        ? { row: there, competition, replayed: true }
        : { refusals: [ID_REUSED] };
    }
    const about = await this.caseOf(tx, input, await this.memory.locked(tx, competition));
    const problem = caseProblem(about);
    if (problem) return { refusals: [problem] };
    const refusals = input.decision === 'ratified' ? await this.objections(tx, about, viewer) : [];
    if (refusals.length > 0) return { refusals };
    const row = newDecision(about, viewer, capacity);
    await recordDecisions.add(tx, row);
    const version = await competitions.bumpVersion(tx, organisationId, competition.id);
    const stored = (await recordDecisions.find(tx, organisationId, row.id))!;
    return { row: stored, competition: { ...competition, version }, replayed: false };
  }

  private async caseOf(tx: Tx, input: RecordRatifyInput, loaded: LoadedCompetition): Promise<Case> {
    const { organisationId, id } = loaded.row;
    const found = marksOf(loaded).find(({ performance }) => performance.id === input.attemptId);
    const kind = input.kind === 'club-record' ? 'club record' : 'meet record';
    const all = await recordDecisions.ofCompetitions(tx, organisationId, [id]);
    return {
      input,
      loaded,
      mark: found ? evident(loaded, found) : null,
      before: all.filter((row) => row.attemptId === input.attemptId && row.kind === kind),
      kind,
      recheck: (await loggedRecheck(tx, loaded, input.attemptId)) ?? input.recheck ?? null,
    };
  }

  /** What speaks against a ratification: what nobody may decide, and what the referee did not say that he knows. */
  private async objections(
    tx: Tx,
    { input, loaded, mark, kind, recheck }: Case,
    viewer: Identity,
  ): Promise<UserError[]> {
    const { row, meet } = loaded;
    const { performance } = mark!;
    const owners = {
      clubs: performance.club === null ? [] : [performance.club],
      meets: [(meet satisfies MeetRow).id],
      athletes: [],
    };
    const evidence = await this.reader.read(tx, viewer, owners, row.event);
    const book = bookOf(evidence, recordTerms(row.rules, row.edition));
    const checks = { recheck, measuring: input.measuring ?? null };
    return ratificationProblems(book, { performance: performance.id, kind }, checks)
      .filter(({ code, prevents }) => prevents || !input.despite.includes(code))
      .map(objection);
  }
}

function evident(
  { row, meet }: LoadedCompetition,
  { performance, line }: ReturnType<typeof marksOf>[number],
): Evident {
  return { performance, origin: { kind: 'attempt', row, meet, line } };
}

/** How the implement was found after the attempt, if the attempt names one and it was looked at. */
async function loggedRecheck(
  at: Reads,
  { row, state, kind }: LoadedCompetition,
  attemptId: string,
): Promise<Recheck | null> {
  const implementId = kind === 'distance' ? state.attempts.get(attemptId)?.judgement.implementId : undefined;
  if (implementId === undefined) return null;
  const log = await inspections.ofImplements(at, row.organisationId, row.meetId, [implementId]);
  const entries = inForce(log).map((look) => ({
    implement: look.implementId,
    outcome: look.outcome,
    attempt: look.attemptId,
  }));
  const found = recheckOf(entries, attemptId, implementId);
  return found === 'missing' ? null : found;
}

function caseProblem({ input, loaded, mark, before }: Case): UserError | null {
  const last = before.at(-1);
  const inForce = last && last.decision !== 'withdrawn' ? last : null;
  if (input.decision === 'withdrawn') {
    if (!inForce) return NOTHING_DECIDED;
    return isMark(input, inForce.mark, loaded) ? null : markChanged(inForce.mark, loaded);
  }
  if (!mark) return NO_SUCH_MARK;
  if (!isMark(input, mark.performance.mark, loaded)) return markChanged(mark.performance.mark, loaded);
  return inForce?.decision === input.decision && isAbout(inForce, mark) ? ALREADY_SO : null;
}

function isMark({ mark }: RecordRatifyInput, value: number, { row }: LoadedCompetition): boolean {
  return formatMark(value, row.unit) === mark;
}

function newDecision(
  { input, loaded, mark, before, kind, recheck }: Case,
  viewer: Identity,
  capacity: Capacity,
): NewRecordDecision {
  const { organisationId, id: competitionId } = loaded.row;
  const { competitorId, ...said } =
    input.decision === 'withdrawn' ? before.at(-1)! : (mark && subjectOf(mark))!;
  return {
    ...{ organisationId, id: input.id ?? uuidV7(), competitionId, attemptId: input.attemptId, competitorId },
    ...{ kind, decision: input.decision, mark: said.mark, wind: said.wind },
    ...{ implementGrams: said.implementGrams, recheck, measuring: input.measuring ?? null },
    ...{ despite: input.despite, reason: input.reason, authority: capacity, decidedBy: viewer.holder! },
  };
}

function subjectOf({
  performance,
  origin,
}: Evident): Pick<RecordDecisionRow, 'competitorId' | 'mark' | 'wind' | 'implementGrams'> {
  if (origin.kind !== 'attempt') throw new Error('A starting mark is not decided about.');
  const { mark, implementGrams } = performance;
  return { competitorId: origin.line.competitor.id, mark, wind: windText(performance), implementGrams };
}

function isSame(row: RecordDecisionRow, input: RecordRatifyInput, { id, unit }: CompetitionRow): boolean {
  return (
    row.competitionId === id &&
    row.attemptId === input.attemptId &&
    row.kind.replace(' ', '-') === input.kind &&
    row.decision === input.decision &&
    formatMark(row.mark, unit) === input.mark &&
    row.reason === input.reason
  );
}

function objection({ code, prevents, message }: RatificationProblem): UserError {
  const remedy = prevents
    ? 'Correct what is wrong with the mark first, or decline it.'
    : `Do it, or name ${code} in \`despite\` if the decision is made all the same.`;
  return refusal({ code, path: prevents ? ['attemptId'] : ['despite'], message, rule: 'CR31', remedy });
}

function markChanged(value: number, { row }: LoadedCompetition): UserError {
  return refusal({
    code: 'MARK_CHANGED',
    path: ['mark'],
    message: `The mark is ${formatMark(value, row.unit)}.`,
    remedy: 'Look at the mark as it stands, and decide about that.',
  });
}

const NO_SUCH_MARK = refusal({
  code: 'NO_SUCH_MARK',
  path: ['attemptId'],
  message: 'No mark of this attempt stands in the competition.',
  remedy: 'Choose one of the marks that would be a record.',
});

const NOTHING_DECIDED = refusal({
  code: 'NOTHING_DECIDED',
  path: ['decision'],
  message: 'Nothing is decided about this mark that could be taken back.',
  remedy: 'Ratify or decline it, or leave it.',
});

const ALREADY_SO = refusal({
  code: 'ALREADY_SO',
  path: ['decision'],
  message: 'It is decided so already.',
  remedy: 'Leave it, or take the decision back.',
});
