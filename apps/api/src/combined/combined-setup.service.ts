import {
  combinedEntrants,
  combinedEvents,
  combinedJournal,
  competitions,
  meets,
  type CombinedEntrantRow,
  type CombinedEventRow,
  type NewCombinedEvent,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { clubAtEntry, entrantProblem, nextPosition, shapeProblem } from './new-entrant.js';
import { linkProblem } from './new-link.js';
import { newEvent } from './new-event.js';
import type {
  CombinedComponentLinkInput,
  CombinedEntrantEnterInput,
  CombinedEventCreateInput,
} from './combined-setup.inputs.js';

export type Changed = { readonly row: CombinedEventRow } | { readonly refusal: Refusal };

/** Setting combined events up: what they are, who is in them, what they are counted from. For directors of the meet. */
@Injectable()
export class CombinedSetupService {
  constructor(private readonly database: Database) {}

  async create(
    input: CombinedEventCreateInput,
    viewer: Identity,
  ): Promise<Created<CombinedEventRow> | { readonly refusals: Refusal[] }> {
    viewer.requireDirector(input.meetId);
    const { organisationId } = viewer;
    const meet = await this.database.read((at) => meets.find(at, organisationId, input.meetId));
    if (!meet) return { refusal: notFound('meet', ['meetId']) };
    const made = newEvent(input, meet);
    if ('refusals' in made) return made;
    return createOnce<CombinedEventRow, NewCombinedEvent>(this.database, {
      wanted: made.row,
      find: (tx, id) => combinedEvents.find(tx, organisationId, id),
      insert: async (tx) => {
        await combinedEvents.insert(tx, made.row);
        return null;
      },
    });
  }

  /** Enters somebody; the answer has the combined event as it is with the entrant. */
  async enter(
    input: CombinedEntrantEnterInput,
    viewer: Identity,
  ): Promise<
    | { readonly entrantId: string; readonly row: CombinedEventRow; readonly replayed: boolean }
    | { readonly refusal: Refusal }
  > {
    const { organisationId } = viewer;
    const event = await this.database.read((at) =>
      combinedEvents.find(at, organisationId, input.combinedEventId),
    );
    if (!event) return { refusal: notFound('combined event', ['combinedEventId']) };
    viewer.requireDirector(event.meetId);
    const malformed = shapeProblem(input);
    if (malformed) return { refusal: malformed };
    const wanted: Omit<CombinedEntrantRow, 'position'> = {
      organisationId,
      id: input.id ?? uuidV7(),
      combinedEventId: event.id,
      athleteId: input.athleteId ?? null,
      listedName: input.listedName ?? null,
      clubId: await this.database.read((at) => clubAtEntry(at, organisationId, input)),
      listedClub: input.listedClub ?? null,
      bib: input.bib,
      guest: input.isGuest,
    };
    const made = await createOnce<CombinedEntrantRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => combinedEntrants.find(tx, organisationId, id),
      insert: (tx) => this.insertEntrant(tx, wanted),
    });
    if ('refusal' in made) return { refusal: made.refusal };
    const row = await this.database.read((at) => combinedEvents.find(at, organisationId, event.id));
    return { entrantId: made.row.id, row: row!, replayed: made.replayed };
  }

  private async insertEntrant(tx: Tx, wanted: Omit<CombinedEntrantRow, 'position'>): Promise<Refusal | null> {
    const { organisationId, combinedEventId } = wanted;
    const locked = await combinedEvents.lock(tx, organisationId, combinedEventId);
    if (locked?.status === 'official') return SIGNED_OFF;
    const list = await combinedEntrants.ofEvents(tx, organisationId, [combinedEventId]);
    const refused = await entrantProblem(tx, wanted, list);
    if (refused) return refused;
    await combinedEntrants.insert(tx, [{ ...wanted, position: nextPosition(list) }]);
    await combinedEvents.bumpVersion(tx, organisationId, combinedEventId);
    return null;
  }

  /** Takes somebody off whom the journal does not name. */
  async withdraw(entrantId: string, viewer: Identity): Promise<Changed> {
    const { organisationId } = viewer;
    return this.database.write(async (tx) => {
      const entrant = await combinedEntrants.find(tx, organisationId, entrantId);
      if (!entrant) return { refusal: notFound('entrant', ['entrantId']) };
      const row = await combinedEvents.lock(tx, organisationId, entrant.combinedEventId);
      if (!row) return { refusal: notFound('entrant', ['entrantId']) };
      viewer.requireDirector(row.meetId);
      if (row.status === 'official') return { refusal: SIGNED_OFF };
      const entries = await combinedJournal.readAll(tx, organisationId, [row.id]);
      if (entries.some(({ body }) => 'entrant' in body && body.entrant === entrantId))
        return { refusal: IN_JOURNAL };
      await combinedEntrants.remove(tx, organisationId, entrantId);
      return { row: { ...row, version: await combinedEvents.bumpVersion(tx, organisationId, row.id) } };
    });
  }

  /** From now on the event is counted from this competition, or from what is entered. Doing it again changes nothing. */
  async link(input: CombinedComponentLinkInput, viewer: Identity): Promise<Changed> {
    const { organisationId } = viewer;
    const { combinedEventId, event, competitionId = null } = input;
    return this.database.write(async (tx) => {
      const row = await combinedEvents.lock(tx, organisationId, combinedEventId);
      if (!row) return { refusal: notFound('combined event', ['combinedEventId']) };
      viewer.requireDirector(row.meetId);
      const links = await combinedEvents.linksOf(tx, organisationId, [row.id]);
      if ((links.find((one) => one.event === event)?.competitionId ?? null) === competitionId) return { row };
      if (row.status === 'official') return { refusal: SIGNED_OFF };
      const competition =
        competitionId === null ? null : await competitions.find(tx, organisationId, competitionId);
      const entries = await combinedJournal.readAll(tx, organisationId, [row.id]);
      const refused = linkProblem(row, input, competition, entries);
      if (refused) return { refusal: refused };
      await combinedEvents.link(tx, {
        ...{ organisationId, combinedEventId, event, competitionId },
        linkedBy: viewer.holder ?? '',
      });
      return { row: { ...row, version: await combinedEvents.bumpVersion(tx, organisationId, row.id) } };
    });
  }
}

const SIGNED_OFF = refusal({
  code: 'SIGNED_OFF',
  message: 'The result of the combined event is official.',
  remedy: 'A director can open it again, with a reason.',
});

const IN_JOURNAL = refusal({
  code: 'IN_JOURNAL',
  path: ['entrantId'],
  message: 'The journal names the entrant, so the line stays.',
  remedy: 'Record that the entrant did not start, or gave up.',
});
