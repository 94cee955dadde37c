import { Injectable } from '@nestjs/common';
import {
  competitions,
  journal,
  violationOf,
  type JournalRow,
  type StoredVerdict,
  type Tx,
} from '#persistence';
import type { AnyEntry, Objection, RefusalCode, SharedBody } from '#rules';
import { StartListService } from '../entries/start-list.service.js';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { decideIn } from '../platform/competition/kinds.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { Turnstile } from '../platform/competition/turnstile.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Capacity, Identity } from '../platform/identity/identity.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { bodyIn, Unreadable, type Entered, type EntryRequest, type FieldNames } from './entry-request.js';
import { asListed, listProblem, withList, withNewLine } from './list-change.js';
import { withImplement } from './named-implement.js';
import { asPartOfCombined } from './part-of-combined.js';
import { asPartOfGroup } from './part-of-group.js';
import { signOffOrReopen, withStatus } from './official-status.js';
import { signingObjection } from './signing-objection.js';

/** What became of an entry. */
export type RecordingOutcome = Recorded | NotRecorded;

export interface Recorded {
  readonly recorded: true;
  readonly entryId: string;
  readonly sequence: number;
  readonly recordedAt: string;
  readonly verdict: StoredVerdict;
  /** The same entry had been recorded before: this is the answer that it got then. */
  readonly replayed: boolean;
  readonly loaded: LoadedCompetition;
}

export interface NotRecorded {
  readonly recorded: false;
  readonly userError: UserError;
}

/** Who enters something, and with which right. */
export interface RecordedBy {
  readonly capacity: Capacity;
  readonly holder: string;
  /** What the token is called. */
  readonly label: string | null;
  /** Of a decision that needs two persons: who asked for it, where this is the second one. */
  readonly firstPerson?: string;
}

/** Records entries: locks the competition, lets the rules decide, appends to the journal, then tells the others. */
@Injectable()
export class RecordingService {
  private readonly turnstile = new Turnstile();

  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
    private readonly changes: CompetitionChanges,
    private readonly startList: StartListService,
  ) {}

  /**
   * One entry, decided and stored in one transaction. What is refused is not stored. Throws UNAUTHENTICATED or
   * FORBIDDEN when the viewer has no right on the competition at this moment.
   */
  async record(viewer: Identity, request: EntryRequest): Promise<RecordingOutcome> {
    return this.alone(
      viewer,
      request.competitionId,
      (tx, loaded, by) => this.recordIn(tx, loaded, request, by),
      request.isWind ? 'winds' : 'all',
    );
  }

  /**
   * Does something with a competition while nobody else does: in one transaction that holds its lock. What it recorded
   * is told to the others after the commit. Throws as `record` does.
   */
  async alone<T extends { readonly recorded: unknown }>(
    viewer: Identity,
    competitionId: string,
    work: (tx: Tx, loaded: LoadedCompetition, by: RecordedBy) => Promise<T>,
    what: 'all' | 'winds' = 'all',
  ): Promise<T | NotRecorded> {
    const outcome = await this.turnstile.pass(competitionId, () =>
      this.locked(viewer, competitionId, work, what),
    );
    if (isRecorded(outcome) && !outcome.replayed) this.announce(outcome);
    return outcome;
  }

  private async locked<T>(
    viewer: Identity,
    competitionId: string,
    work: (tx: Tx, loaded: LoadedCompetition, by: RecordedBy) => Promise<T>,
    what: 'all' | 'winds',
  ): Promise<T | NotRecorded> {
    try {
      return await this.database.write(async (tx) => {
        const row = await competitions.lock(tx, viewer.organisationId, competitionId);
        if (!row) return notRecorded(notFound('competition', ['competitionId']));
        const capacity = viewer.requireCapacity(row, what);
        const loaded = await this.memory.locked(tx, row);
        return work(tx, loaded, {
          capacity,
          holder: viewer.holder!,
          label: viewer.label,
        });
      });
    } catch (error) {
      // Another competition has the id: only the database sees all of them at once.
      if (ID_CONSTRAINTS.has(violationOf(error)?.constraint ?? '')) return notRecorded(ID_REUSED);
      throw error;
    }
  }

  /**
   * One entry in the transaction of whoever holds the lock on the competition's row, as part of something larger that
   * happens whole or not at all. What is refused is not stored; what was recorded is to be announced after the commit.
   */
  async recordIn(
    tx: Tx,
    loaded: LoadedCompetition,
    request: EntryRequest,
    by: RecordedBy,
  ): Promise<RecordingOutcome> {
    const { row, state } = loaded;
    const sent = bodyIn(loaded, request.entered);
    if (sent instanceof Unreadable) return notRecorded(refusal(sent.refusal));
    const { details = {} } = request;
    const { athleteId } = details;
    const fingerprint = fingerprintOf(row.id, athleteId === undefined ? sent : { ...sent, athleteId });
    if (state.journal.some(({ entry }) => entry.id === request.entryId)) {
      return this.replay(tx, loaded, request.entryId, fingerprint);
    }
    if (request.expectedVersion !== null && request.expectedVersion !== row.version) {
      return notRecorded(versionConflict(row.version));
    }
    const objection = isDecisive(sent) ? decisionObjection(loaded, sent, by) : null;
    if (objection) return notRecorded(objection);
    const body = asListed(await withImplement(tx, row, sent), loaded);
    const entry: AnyEntry = { id: request.entryId, by: by.capacity, actor: by.holder, ...body };
    const problem = await listProblem(tx, loaded, entry, details);
    if (problem) return notRecorded(problem);
    const listed = await withNewLine(tx, loaded, entry, details);
    const inCombined = await asPartOfCombined(tx, listed, entry);
    const asDecided = await asPartOfGroup(tx, this.memory, inCombined, entry);
    const { after: folded, verdict } = decideIn(asDecided, entry);
    if (verdict.standing === 'refused') return notRecorded(refusalOf(verdict.refusal, request.entered));
    const appended = await journal.append(tx, {
      organisationId: row.organisationId,
      competitionId: row.id,
      entryId: entry.id,
      kind: entry.kind,
      body,
      standing: verdict.standing,
      verdict,
      authority: by.capacity,
      actor: by.holder,
      device: request.device ?? by.label,
      deviceAt: request.deviceAt?.toISOString() ?? null,
      fingerprint,
    });
    const { sequence, recordedAt, version } = appended;
    const after: LoadedCompetition = {
      ...listed,
      ...folded,
      row: { ...row, version, lastSequence: sequence },
      changedAt: new Date(recordedAt),
    };
    const kept = await this.afterwards(
      tx,
      await withList(tx, after, entry, details, this.startList),
      entry,
      by.firstPerson ?? null,
    );
    return {
      recorded: true,
      entryId: entry.id,
      sequence,
      recordedAt,
      verdict,
      replayed: false,
      loaded: kept,
    };
  }

  /** Tells the others of what was recorded, once it is committed. */
  announce({ loaded }: Recorded): void {
    const { id: competitionId, version } = loaded.row;
    this.memory.remember(loaded);
    this.changes.announce({ competitionId, version });
  }

  /** What follows from an entry outside the journal: the first one opens a draft, a signature is archived. */
  private async afterwards(
    tx: Tx,
    after: LoadedCompetition,
    entry: AnyEntry,
    firstPerson: string | null,
  ): Promise<LoadedCompetition> {
    if (isDecisive(entry)) return signOffOrReopen(tx, after, entry, firstPerson);
    return after.row.status === 'draft' ? withStatus(tx, after, 'open') : after;
  }

  private async replay(
    tx: Tx,
    loaded: LoadedCompetition,
    entryId: string,
    fingerprint: string,
  ): Promise<RecordingOutcome> {
    const stored: JournalRow = (await journal.findEntry(tx, loaded.row.organisationId, entryId))!;
    if (stored.fingerprint !== fingerprint) return notRecorded(ID_REUSED);
    const { sequence, recordedAt, verdict } = stored;
    return { recorded: true, entryId, sequence, recordedAt, verdict, replayed: true, loaded };
  }
}

const ID_CONSTRAINTS: ReadonlySet<string> = new Set(['journal_entry_id_unique', 'competitor_pkey']);

export const ID_REUSED = refusal({
  code: 'ID_REUSED',
  message: 'The entry id already belongs to another entry.',
  path: ['entryId'],
  remedy: 'Make a new id for a new entry; repeat an entry only unchanged.',
});

const NEEDS_SECOND_PERSON = refusal({
  code: 'NEEDS_SECOND_PERSON',
  message: 'At this meet a second person confirms signatures and reopenings.',
  remedy: 'Use competitionSignOff or competitionReopen, then competitionConfirm.',
});

function isRecorded(outcome: { readonly recorded: unknown }): outcome is Recorded {
  return outcome.recorded === true;
}

function isDecisive<T extends { readonly kind: string }>(
  entry: T,
): entry is Extract<T, { kind: 'sign-off' | 'reopening' }> {
  return entry.kind === 'sign-off' || entry.kind === 'reopening';
}

/** What stands against a signature or a reopening before the rules are asked. */
function decisionObjection(
  loaded: LoadedCompetition,
  sent: Extract<SharedBody, { kind: 'sign-off' | 'reopening' }>,
  { firstPerson }: RecordedBy,
): UserError | null {
  if (loaded.meet.needsSecondPerson && firstPerson === undefined) return NEEDS_SECOND_PERSON;
  return sent.kind === 'sign-off' ? signingObjection(loaded, sent, Date.now()) : null;
}

export function notRecorded(userError: UserError): NotRecorded {
  return { recorded: false, userError };
}

/** An entry's fields as the API names them in every input. */
const INPUT_FIELDS: FieldNames = {
  id: 'entryId',
  competitor: 'competitorId',
  competitors: 'competitorIds',
  attempt: 'attemptId',
  entry: 'targetEntryId',
  after: 'afterRound',
};

export function refusalOf(
  { code, message, rule, remedy, field }: Objection<RefusalCode>,
  entered: Entered,
): UserError {
  const own: FieldNames = entered.in === 'any' ? {} : (entered.fields ?? {});
  const path = field === null ? undefined : [own[field] ?? INPUT_FIELDS[field] ?? field];
  return refusal({ code, message, rule, remedy, path });
}
