import {
  athletes,
  observations,
  practice,
  violationOf,
  type CountingThrow,
  type NewObservation,
  type NewPracticeThrow,
  type PracticeSessionRow,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { Batch, knownAs, noSuch } from './batch.js';
import { handOf } from './hand.js';
import { newObservation } from './new-observation.js';
import { newThrow, type LoggedBy } from './new-throw.js';
import type { PracticeSessionCreateInput, ThrowLogInput, ThrowsLogInput } from './practice.inputs.js';
import { VocabularyService } from './vocabulary.service.js';

/** Days of practice, and the throws of a group as a device keeps and sends them. */
@Injectable()
export class PracticeService {
  constructor(
    private readonly database: Database,
    private readonly vocabularies: VocabularyService,
  ) {}

  async createSession(
    input: PracticeSessionCreateInput,
    viewer: Identity,
  ): Promise<Created<PracticeSessionRow>> {
    const { personId: keptBy } = viewer.requireAccount();
    const { organisationId } = viewer;
    const { onDate, place = null, note = null } = input;
    const wanted = { organisationId, id: input.id ?? uuidV7(), onDate, place, note, keptBy };
    return createOnce<PracticeSessionRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => practice.findSession(tx, organisationId, id),
      insert: async (tx) => {
        await practice.insertSession(tx, wanted);
        return null;
      },
    });
  }

  /** Null: there is none. Only throws of athletes whom the viewer coaches. */
  async session(
    id: string,
    viewer: Identity,
  ): Promise<{ readonly row: PracticeSessionRow; readonly throws: readonly CountingThrow[] } | null> {
    const { organisationId } = viewer;
    return this.database.read(async (at) => {
      const row = await practice.findSession(at, organisationId, id);
      if (!row) return null;
      const throws = await practice.ofSession(at, organisationId, id);
      return { row, throws: throws.filter(({ athleteId }) => viewer.coaches(athleteId)) };
    });
  }

  /** Keeps what can be kept, in one transaction; what is refused keeps nothing else out. */
  async log(input: ThrowsLogInput, viewer: Identity): Promise<Batch> {
    try {
      return await this.attempt(input, viewer);
    } catch (error) {
      // The same batch twice at once: the one that came second finds the rows now.
      if (violationOf(error)?.kind !== 'unique') throw error;
      return this.attempt(input, viewer);
    }
  }

  private async attempt(input: ThrowsLogInput, viewer: Identity): Promise<Batch> {
    const { organisationId } = viewer;
    const by: LoggedBy = {
      organisationId,
      personId: viewer.requireAccount().personId,
      device: input.device ?? null,
      deviceAt: input.deviceAt?.toISOString() ?? null,
    };
    return this.database.write(async (tx) => {
      const batch = new Batch();
      if (!(await practice.findSession(tx, organisationId, input.sessionId))) {
        batch.userErrors.push(notFound('session', ['sessionId']));
        return batch;
      }
      const there = await this.there(tx, input, by);
      const kept: Kept = { throws: [], seen: [] };
      input.throws.forEach((one, at) => {
        const path = ['throws', String(at)];
        if (!viewer.coaches(one.athleteId) || !there.hands.has(one.athleteId)) {
          batch.refused(one.id, noSuch('athlete', [...path, 'athleteId']));
        } else keep(one, { path, there, by, batch, kept, sessionId: input.sessionId });
      });
      await practice.insertThrows(tx, kept.throws);
      await observations.insert(tx, kept.seen);
      return batch;
    });
  }

  private async there(tx: Tx, { throws }: ThrowsLogInput, { organisationId }: LoggedBy) {
    const named = throws.flatMap(({ id, replacesId }) => [id, ...(replacesId ? [replacesId] : [])]);
    const noted = throws.flatMap(({ observation }) =>
      observation ? [observation.id, ...(observation.replacesId ? [observation.replacesId] : [])] : [],
    );
    const rows = await athletes.byIds(tx, organisationId, [...new Set(throws.map((one) => one.athleteId))]);
    return {
      throws: await practice.throwRows(tx, organisationId, named),
      seen: noted.length > 0 ? await observations.byIds(tx, organisationId, noted) : [],
      hands: new Map(rows.map((row) => [row.id, handOf(row)])),
      vocabulary: (await this.vocabularies.read(tx, organisationId)).vocabulary,
    };
  }
}

interface Kept {
  readonly throws: NewPracticeThrow[];
  readonly seen: NewObservation[];
}

interface Into {
  readonly path: readonly string[];
  readonly sessionId: string;
  readonly there: Awaited<ReturnType<PracticeService['there']>>;
  readonly by: LoggedBy;
  readonly batch: Batch;
  readonly kept: Kept;
}

/** A throw, and what was seen of it, which is looked at even when the throw itself was kept before. */
function keep(input: ThrowLogInput, into: Into): void {
  const thrown = keepThrow(input, into);
  if (thrown === null || !input.observation) return;
  const { path, there, by, batch, kept } = into;
  const place = [...path, 'observation'];
  const seen = {
    ...{ athleteId: thrown.athleteId, event: thrown.event, outcome: thrown.outcome },
    ...{ practiceThrowId: thrown.throwId, trial: null },
  };
  const hand = there.hands.get(thrown.athleteId) ?? null;
  const row = newObservation(input.observation, seen, { ...by, vocabulary: there.vocabulary, hand }, place);
  if (!('fingerprint' in row)) return batch.refused(input.observation.id, ...row);
  keepObservation(row, place, [...there.seen, ...kept.seen], batch, kept.seen);
}

/** The throw, if it is there now. */
function keepThrow(input: ThrowLogInput, into: Into): NewPracticeThrow | null {
  const { path, there, by, batch, kept, sessionId } = into;
  const row = newThrow(input, sessionId, by, path);
  if (!('fingerprint' in row)) {
    batch.refused(input.id, ...row);
    return null;
  }
  const all = [...there.throws, ...kept.throws];
  const known = knownAs(row, all, path);
  if (known === 'replayed') {
    batch.replayed(row.id);
    return all.find(({ id }) => id === row.id) ?? null;
  }
  const before = all.find(({ id }) => id === row.replacesId);
  const isUnknown = row.replacesId !== null && before?.athleteId !== row.athleteId;
  if (known !== 'new' || isUnknown) {
    batch.refused(row.id, known === 'new' ? noSuch('throw', [...path, 'replacesId']) : known);
    return null;
  }
  const whole = before ? { ...row, throwId: before.throwId } : row;
  kept.throws.push(whole);
  batch.stored(row.id);
  return whole;
}

/** Into `kept`, unless it is there or corrects what is not. */
export function keepObservation(
  row: NewObservation,
  path: readonly string[],
  there: readonly NewObservation[],
  batch: Batch,
  kept: NewObservation[],
): void {
  const known = knownAs(row, there, path);
  if (known === 'replayed') return batch.replayed(row.id);
  if (known !== 'new') return batch.refused(row.id, known);
  const isOfAnother =
    row.replacesId !== null && there.find(({ id }) => id === row.replacesId)?.athleteId !== row.athleteId;
  if (isOfAnother) return batch.refused(row.id, noSuch('observation', [...path, 'replacesId']));
  kept.push(row);
  batch.stored(row.id);
}
