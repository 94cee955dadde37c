import { decisions, type CompetitionRow, type DecisionState, type Tx } from '#persistence';
import type { SharedBody } from '#rules';
import { Injectable } from '@nestjs/common';
import { decideIn } from '../platform/competition/kinds.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import { forbidden } from '../platform/errors/api-error.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Identity } from '../platform/identity/identity.js';
import type { EntryRequest } from './entry-request.js';
import {
  ID_REUSED,
  notRecorded,
  RecordingService,
  refusalOf,
  type RecordedBy,
  type RecordingOutcome,
} from './recording.service.js';

type Decision = Extract<SharedBody, { kind: 'sign-off' | 'reopening' }>;

/** Waits for a second person: nothing is in the journal yet. */
export interface Asked {
  readonly recorded: 'asked';
  readonly request: DecisionState;
  readonly replayed: boolean;
  readonly row: CompetitionRow;
}

/**
 * Signatures and reopenings. Where the meet demands two persons, the first one's word waits until a second one with the
 * right of a referee or director gives the same; then it is an entry like any other.
 */
@Injectable()
export class ConfirmationService {
  constructor(
    private readonly recording: RecordingService,
    private readonly database: Database,
  ) {}

  /** Decides at once, or asks for the second person. Throws FORBIDDEN when the viewer may do neither. */
  decide(viewer: Identity, request: EntryRequest, body: Decision): Promise<RecordingOutcome | Asked> {
    return this.recording.alone<RecordingOutcome | Asked>(viewer, request.competitionId, (tx, loaded, by) => {
      if (loaded.meet.needsSecondPerson) return this.ask(tx, loaded, request, body, by);
      if (by.capacity === 'official') throw forbidden('Only a referee or director may do this.');
      return this.recording.recordIn(tx, loaded, request, by);
    });
  }

  private async ask(
    tx: Tx,
    loaded: LoadedCompetition,
    { entryId, expectedVersion }: EntryRequest,
    body: Decision,
    by: RecordedBy,
  ): Promise<RecordingOutcome | Asked> {
    const { row } = loaded;
    const { organisationId, id: competitionId, version } = row;
    const reason = body.kind === 'sign-off' ? body.incomplete : body.reason;
    const there = await decisions.find(tx, organisationId, entryId);
    if (there) {
      const isSame =
        there.competitionId === competitionId &&
        there.kind === body.kind &&
        there.reason === reason &&
        there.askedBy === by.holder;
      return isSame ? { recorded: 'asked', request: there, replayed: true, row } : notRecorded(ID_REUSED);
    }
    if (expectedVersion !== null && expectedVersion !== version) {
      return notRecorded(versionConflict(version));
    }
    const { verdict } = decideIn(loaded, { id: entryId, by: 'referee', actor: by.holder, ...body });
    if (verdict.standing === 'refused') {
      return notRecorded(refusalOf(verdict.refusal, { in: 'any', body }));
    }
    const { capacity: authority, holder: askedBy } = by;
    const asked = { organisationId, id: entryId, competitionId, kind: body.kind, reason, version };
    await decisions.ask(tx, { ...asked, authority, askedBy });
    const request = (await decisions.find(tx, organisationId, entryId))!;
    return { recorded: 'asked', request, replayed: false, row };
  }

  /** The second person's word. Throws FORBIDDEN unless the viewer is a referee or director. */
  confirm(
    viewer: Identity,
    { requestId, despite }: { readonly requestId: string; readonly despite: string | null },
    entry: Omit<EntryRequest, 'entered'>,
  ): Promise<RecordingOutcome> {
    return this.recording.alone(viewer, entry.competitionId, async (tx, loaded, by) => {
      const { row } = loaded;
      if (by.capacity === 'official') throw forbidden('Only a referee or director may do this.');
      const request = await decisions.find(tx, row.organisationId, requestId);
      if (request?.competitionId !== row.id) return notRecorded(notFound('request', ['requestId']));
      const problem = problemOf(request, entry.entryId, by, row);
      if (problem) return notRecorded(problem);
      const entered = { in: 'any', body: bodyOf(request, despite) } as const;
      const confirmed = { ...by, firstPerson: request.askedBy };
      const outcome = await this.recording.recordIn(tx, loaded, { ...entry, entered }, confirmed);
      if (!outcome.recorded || outcome.replayed) return outcome;
      await decisions.confirm(tx, {
        ...{ organisationId: row.organisationId, requestId, askedBy: request.askedBy },
        ...{ entryId: entry.entryId, authority: by.capacity, confirmedBy: by.holder },
      });
      return outcome;
    });
  }

  /** What was asked of a second person, the newest first; nothing for whoever does not work at the competition. */
  async ofCompetition(row: CompetitionRow, viewer: Identity): Promise<DecisionState[]> {
    if (viewer.capacityIn(row) === null && !viewer.isAdmin)
      throw forbidden('This is for those who work at the competition.');
    return this.database.read((at) => decisions.ofCompetition(at, row.organisationId, row.id));
  }
}

function bodyOf({ kind, reason }: DecisionState, despite: string | null): Decision {
  if (kind === 'reopening') return { kind, reason: reason! };
  return { kind, incomplete: reason, ...(despite !== null && { despite }) };
}

function problemOf(
  request: DecisionState,
  entryId: string,
  { holder }: RecordedBy,
  { version }: CompetitionRow,
): UserError | null {
  // The same word again: the journal answers as before.
  if (request.entryId === entryId && request.confirmedBy === holder) return null;
  if (request.entryId !== null) return ALREADY_SO;
  if (request.askedBy === holder) return SAME_PERSON;
  return request.kind === 'sign-off' && request.version !== version ? CHANGED_SINCE : null;
}

const ALREADY_SO = refusal({
  code: 'ALREADY_SO',
  path: ['requestId'],
  message: 'This was confirmed before.',
  remedy: 'Nothing needs to be done.',
});

const SAME_PERSON = refusal({
  code: 'SAME_PERSON',
  path: ['requestId'],
  message: 'Whoever asked for this cannot be the second person.',
  remedy: 'Let another referee or director look at it and confirm.',
});

const CHANGED_SINCE = refusal({
  code: 'CHANGED_SINCE',
  path: ['requestId'],
  message: 'The competition has changed since the result was signed.',
  remedy: 'Look at the result again and sign it anew.',
});
