import {
  combinedEvents,
  combinedJournal,
  combinedOfficialResults,
  violationOf,
  type CombinedEventRow,
  type StoredCombinedVerdict,
  type Tx,
} from '#persistence';
import { applyCombined, type CombinedBody, type CombinedEntry } from '#rules';
import { Injectable } from '@nestjs/common';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { Turnstile } from '../platform/competition/turnstile.js';
import { Database } from '../platform/database/database.js';
import { forbidden } from '../platform/errors/api-error.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Capacity, Identity } from '../platform/identity/identity.js';
import { isRefusal, type CombinedRequest } from './combined-bodies.js';
import { combinedResult, combinedSheet } from './combined-documents.js';
import { capacityIn, CombinedEventsService } from './combined-events.service.js';
import type { LoadedCombined } from './combined-loaded.js';
import { firstPersonOf, isDecision } from './second-word.js';

export interface CombinedRecorded {
  readonly entryId: string;
  readonly sequence: number;
  readonly recordedAt: string;
  readonly verdict: StoredCombinedVerdict;
  /** The same entry had been recorded before: this is the answer that it got then. */
  readonly replayed: boolean;
  readonly row: CombinedEventRow;
}

/** The first of two persons has said it: nothing is in the journal yet. */
export interface Asked {
  readonly asked: true;
  readonly row: CombinedEventRow;
}

export type CombinedOutcome = CombinedRecorded | Asked | { readonly userError: UserError };

interface By {
  readonly capacity: Capacity;
  readonly holder: string;
  readonly label: string | null;
}

/** Records entries of combined events: locks, lets the rules decide, appends to the journal. */
@Injectable()
export class CombinedRecordingService {
  private readonly turnstile = new Turnstile();

  constructor(
    private readonly database: Database,
    private readonly events: CombinedEventsService,
  ) {}

  /**
   * One entry, decided and stored in one transaction. What is refused is not stored. Throws FORBIDDEN when the viewer
   * has no right on the combined event at this moment.
   */
  async record(viewer: Identity, request: CombinedRequest): Promise<CombinedOutcome> {
    return this.turnstile.pass(request.combinedEventId, () => this.store(viewer, request));
  }

  private async store(viewer: Identity, request: CombinedRequest): Promise<CombinedOutcome> {
    try {
      return await this.database.write(async (tx) => {
        const row = await combinedEvents.lock(tx, viewer.organisationId, request.combinedEventId);
        if (!row) return { userError: notFound('combined event', ['combinedEventId']) };
        const [loaded] = await this.events.load(tx, [row]);
        const capacity = capacityIn(viewer, loaded!);
        if (!capacity)
          throw forbidden('Only an official, referee or director of this combined event may do this.');
        return this.decide(tx, loaded!, request, {
          capacity,
          holder: viewer.holder!,
          label: viewer.label,
        });
      });
    } catch (error) {
      // The journal of another combined event has the id.
      if (ID_KEYS.has(violationOf(error)?.constraint ?? '')) return { userError: ID_REUSED };
      throw error;
    }
  }

  private async decide(
    tx: Tx,
    loaded: LoadedCombined,
    request: CombinedRequest,
    by: By,
  ): Promise<CombinedOutcome> {
    const { row, state } = loaded;
    const { body } = request;
    if (isRefusal(body)) return { userError: body };
    const fingerprint = fingerprintOf(row.id, body);
    if (state.journal.some(({ entry }) => entry.id === request.entryId)) {
      return replay(tx, row, request.entryId, fingerprint);
    }
    if (request.expectedVersion !== null && request.expectedVersion !== row.version) {
      return { userError: versionConflict(row.version) };
    }
    const entry: CombinedEntry = { id: request.entryId, by: by.capacity, actor: by.holder, ...body };
    const { state: after, verdict } = applyCombined(state, entry);
    if (verdict.standing === 'refused') {
      const { code, message, rule, remedy, field } = verdict.refusal;
      const path = field === null ? undefined : [request.fields[field] ?? field];
      return { userError: refusal({ code, message, rule, remedy, path }) };
    }
    const first = await firstWord(tx, loaded, request.entryId, body, by);
    if ('userError' in first || 'asked' in first) return first;
    const { sequence, version, recordedAt } = await combinedJournal.append(tx, {
      ...{ organisationId: row.organisationId, combinedEventId: row.id, entryId: entry.id },
      ...{ kind: entry.kind, body, standing: verdict.standing, verdict },
      ...{ authority: by.capacity, actor: by.holder, device: request.device ?? by.label },
      ...{ deviceAt: request.deviceAt?.toISOString() ?? null, fingerprint },
    });
    const counted = { ...loaded, state: after, row: { ...row, version, lastSequence: sequence } };
    const kept = await afterwards(tx, counted, body, { ...first, holder: by.holder });
    return { entryId: entry.id, sequence, recordedAt, verdict, replayed: false, row: kept };
  }
}

/** Whose word came first, where the meet demands two persons; `asked`: this is the first, and waits. */
async function firstWord(
  tx: Tx,
  loaded: LoadedCombined,
  id: string,
  body: CombinedBody,
  { capacity: authority, holder }: By,
): Promise<{ readonly firstPerson: string | null } | Asked | { readonly userError: UserError }> {
  if (!loaded.meet.needsSecondPerson || !isDecision(body)) return { firstPerson: null };
  const word = await firstPersonOf(tx, loaded, body, { id, authority, holder });
  return 'asked' in word ? { asked: true, row: loaded.row } : word;
}

/** What follows from an entry outside the journal: the first one opens a draft, a signature is archived. */
async function afterwards(
  tx: Tx,
  after: LoadedCombined,
  body: CombinedBody,
  { firstPerson, holder }: { readonly firstPerson: string | null; readonly holder: string },
): Promise<CombinedEventRow> {
  const { organisationId, id } = after.row;
  const status =
    body.kind === 'sign-off' ? 'official' : after.state.signedOff ? after.row.status : ('open' as const);
  if (body.kind === 'sign-off') {
    await combinedOfficialResults.archive(tx, {
      ...{ organisationId, combinedEventId: id, sequence: after.row.lastSequence },
      signedBy: firstPerson ?? holder,
      confirmedBy: firstPerson === null ? null : holder,
      sheet: combinedSheet(after, null),
      result: combinedResult(after),
    });
  }
  if (status === after.row.status) return after.row;
  const version = await combinedEvents.bumpVersion(tx, organisationId, id, status);
  return { ...after.row, version, status };
}

async function replay(
  tx: Tx,
  row: CombinedEventRow,
  entryId: string,
  fingerprint: string,
): Promise<CombinedOutcome> {
  const stored = (await combinedJournal.findEntry(tx, row.organisationId, entryId))!;
  if (stored.fingerprint !== fingerprint) return { userError: ID_REUSED };
  const { sequence, recordedAt, verdict } = stored;
  return { entryId, sequence, recordedAt, verdict, replayed: true, row };
}

const ID_KEYS = new Set(['combined_entry_id_unique', 'combined_request_pkey']);

const ID_REUSED = refusal({
  code: 'ID_REUSED',
  message: 'The entry id already belongs to another entry.',
  path: ['entryId'],
  remedy: 'Make a new id for a new entry; repeat an entry only unchanged.',
});
