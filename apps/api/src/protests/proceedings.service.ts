import { Injectable } from '@nestjs/common';
import { competitions, proceedings, violationOf, type Tx } from '#persistence';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Refusal, UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import {
  ID_REUSED,
  notRecorded,
  RecordingService,
  type NotRecorded,
  type RecordedBy,
} from '../recording/recording.service.js';

/** Done, or it had been done before. */
export interface Proceeded {
  readonly recorded: true;
  readonly replayed: boolean;
  readonly loaded: LoadedCompetition;
}

export type ProceedingOutcome = Proceeded | NotRecorded;

/** Who writes it down, as every row has it. */
export interface WrittenBy {
  readonly authority: RecordedBy['capacity'];
  readonly actor: string;
  readonly device: string | null;
  readonly deviceAt: string | null;
}

interface Brought {
  readonly competitionId: string;
  readonly entryId: string;
  readonly device?: string | null;
  readonly deviceAt?: Date | null;
}

/** What was found of an id: the same again, something else, or nothing. */
export type Earlier = 'same' | 'other' | null;

export interface Work {
  /** What was stored under the id that the client made. */
  readonly earlier: (loaded: LoadedCompetition) => Earlier;
  /** What stands in the way; otherwise the competition after what has been stored. */
  readonly store: (
    tx: Tx,
    loaded: LoadedCompetition,
    written: WrittenBy,
    by: RecordedBy,
  ) => Promise<LoadedCompetition | Refusal | UserError>;
}

/** Keys of the tables of proceedings: only the database sees those of all competitions at once. */
const KEYS = new Set(['result_posting_pkey', 'protest_pkey', 'protest_step_pkey']);

/** Stores what is done about a result: under the lock of the competition, as a version of its own, told to its readers. */
@Injectable()
export class ProceedingsService {
  constructor(private readonly recording: RecordingService) {}

  async proceed(viewer: Identity, brought: Brought, work: Work): Promise<ProceedingOutcome> {
    try {
      return await this.recording.alone<ProceedingOutcome>(viewer, brought.competitionId, (tx, loaded, by) =>
        this.within(tx, loaded, by, brought, work),
      );
    } catch (error) {
      if (KEYS.has(violationOf(error)?.constraint ?? '')) return notRecorded(ID_REUSED);
      throw error;
    }
  }

  private async within(
    tx: Tx,
    loaded: LoadedCompetition,
    by: RecordedBy,
    { device, deviceAt }: Brought,
    { earlier, store }: Work,
  ): Promise<ProceedingOutcome> {
    const found = earlier(loaded);
    if (found === 'same') return { recorded: true, replayed: true, loaded };
    if (found === 'other') return notRecorded(ID_REUSED);
    const written = {
      authority: by.capacity,
      actor: by.holder,
      device: device ?? by.label,
      deviceAt: deviceAt?.toISOString() ?? null,
    };
    const stored = await store(tx, loaded, written, by);
    if ('code' in stored) return notRecorded(stored);
    const { organisationId, id } = stored.row;
    const version = await competitions.bumpVersion(tx, organisationId, id);
    const fresh = await proceedings.ofCompetition(tx, organisationId, id);
    const after = { ...stored, row: { ...stored.row, version }, proceedings: fresh };
    return { recorded: true, replayed: false, loaded: after };
  }
}
