import {
  athletes,
  notebook,
  observations,
  practice,
  violationOf,
  type AthleteRow,
  type CountingObservation,
  type CountingThrow,
  type FocusBody,
  type NotebookBody,
  type NotebookEntryRow,
  type ReleaseBody,
  type Tx,
} from '#persistence';
import { definitionOf, isTechniqueEvent, type Vocabulary } from '#technique';
import { Injectable } from '@nestjs/common';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { Database } from '../platform/database/database.js';
import { ID_REUSED, notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { noSuch } from './batch.js';
import { notTaught, VocabularyService } from './vocabulary.service.js';

export type Noted =
  | { readonly id: string; readonly athlete: AthleteRow; readonly replayed: boolean }
  | { readonly refusal: Refusal };

/** What an entry is to be, once what is there is known. */
export interface Wanted {
  readonly body: NotebookBody;
  readonly replacesId: string | null;
}

type Decide = (
  tx: Tx,
  entries: readonly NotebookEntryRow[],
  vocabulary: Vocabulary,
) => Promise<Wanted | Refusal> | Wanted | Refusal;

/** What is said of athletes beside their throws, and what of it each may read. */
@Injectable()
export class NotebookService {
  constructor(
    private readonly database: Database,
    private readonly vocabularies: VocabularyService,
  ) {}

  /** The athletes that the viewer coaches, is, or is the guardian of. */
  async athletes(viewer: Identity): Promise<AthleteRow[]> {
    const ids = viewer.followed();
    const rows = await this.database.read((at) => athletes.byIds(at, viewer.organisationId, ids));
    return [...rows].sort((a, b) => nameOf(a).localeCompare(nameOf(b)) || (a.id < b.id ? -1 : 1));
  }

  /** Null: there is none. Throws UNAUTHENTICATED or FORBIDDEN for those who do not follow the athlete. */
  async athlete(id: string, viewer: Identity): Promise<AthleteRow | null> {
    viewer.requireFollower(id);
    return this.database.read((at) => athletes.find(at, viewer.organisationId, id));
  }

  /** For each of these athletes everything that was ever said. One statement. */
  async entries(of: readonly AthleteRow[]): Promise<NotebookEntryRow[][]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = of.map(({ id }) => id);
    const rows = await this.database.read((at) => notebook.ofAthletes(at, organisationId, ids));
    return of.map(({ id }) => rows.filter(({ athleteId }) => athleteId === id));
  }

  async throws({ organisationId, id }: AthleteRow): Promise<CountingThrow[]> {
    return this.database.read((at) => practice.ofAthlete(at, organisationId, id));
  }

  async observations({ organisationId, id }: AthleteRow): Promise<CountingObservation[]> {
    return this.database.read((at) => observations.ofAthlete(at, organisationId, id));
  }

  /** Writes one entry under an id of the client’s. Throws FORBIDDEN unless the viewer coaches the athlete. */
  async note(
    { id: ownId, athleteId }: { readonly id?: string | null; readonly athleteId: string },
    asked: object,
    viewer: Identity,
    decide: Decide,
  ): Promise<Noted> {
    viewer.requireCoachOf(athleteId);
    const id = ownId ?? uuidV7();
    const fingerprint = fingerprintOf(athleteId, asked);
    try {
      return await this.attempt(id, athleteId, fingerprint, viewer, decide);
    } catch (error) {
      if (violationOf(error)?.kind !== 'unique') throw error;
      return this.attempt(id, athleteId, fingerprint, viewer, decide);
    }
  }

  private async attempt(
    id: string,
    athleteId: string,
    fingerprint: string,
    viewer: Identity,
    decide: Decide,
  ): Promise<Noted> {
    const { organisationId } = viewer;
    const { personId: madeBy } = viewer.requireAccount();
    return this.database.write(async (tx): Promise<Noted> => {
      const athlete = await athletes.find(tx, organisationId, athleteId);
      if (!athlete) return { refusal: notFound('athlete', ['athleteId']) };
      const there = await notebook.find(tx, organisationId, id);
      if (there)
        return there.fingerprint === fingerprint ? { id, athlete, replayed: true } : { refusal: ID_REUSED };
      const entries = await notebook.ofAthletes(tx, organisationId, [athleteId]);
      const { vocabulary } = await this.vocabularies.read(tx, organisationId);
      const wanted = await decide(tx, entries, vocabulary);
      if ('code' in wanted) return { refusal: wanted };
      const { body, replacesId } = wanted;
      await notebook.insert(tx, {
        ...{ organisationId, id, athleteId, kind: body.kind, body, replacesId, madeBy, fingerprint },
      });
      return { id, athlete, replayed: false };
    });
  }
}

function nameOf({ familyName, givenName }: AthleteRow): string {
  return `${familyName} ${givenName}`;
}

type Of<K extends NotebookBody['kind']> = NotebookEntryRow & {
  readonly body: Extract<NotebookBody, { kind: K }>;
};

/** Entries of a kind that nothing replaces, in the order of saying. */
export function standing<K extends NotebookBody['kind']>(
  entries: readonly NotebookEntryRow[],
  kind: K,
): readonly Of<K>[] {
  const replaced = new Set(entries.flatMap(({ replacesId }) => replacesId ?? []));
  return entries.filter((entry): entry is Of<K> => entry.kind === kind && !replaced.has(entry.id));
}

/** The newest of each key: what is said later takes the place of what was said before. */
export function newest<K extends NotebookBody['kind']>(
  entries: readonly NotebookEntryRow[],
  kind: K,
  keyOf: (body: Of<K>['body']) => string,
): readonly Of<K>[] {
  const latest = new Map<string, Of<K>>();
  for (const entry of standing(entries, kind)) latest.set(keyOf(entry.body), entry);
  return [...latest.values()];
}

/** Whether a part of the notebook is open to the athlete and the guardians. */
export function isReleased(entries: readonly NotebookEntryRow[], what: ReleaseBody['what']): boolean {
  return newest(entries, 'release', (body) => body.what).some(
    ({ body }) => body.what === what && body.isOpen,
  );
}

/** Why codes cannot be looked at in an event; null: they can. `pathOf` says where the code at a place stands. */
export function codeProblem(
  vocabulary: Vocabulary,
  event: string,
  codes: readonly string[],
  pathOf: (at: number) => readonly string[],
): Refusal | null {
  if (!isTechniqueEvent(event)) return notTaught(['event']);
  const wrong = codes.findIndex((code) => definitionOf(vocabulary, code)?.event !== event);
  if (wrong < 0) return null;
  return refusal({
    code: 'CODE_UNKNOWN',
    path: pathOf(wrong),
    message: 'The vocabulary of this event has no such point.',
    remedy: 'Take it from faultVocabulary.',
  });
}

/** The last day of a focus that goes on. */
export function endOfFocus(
  entries: readonly NotebookEntryRow[],
  focusId: string,
  to: string,
): Wanted | Refusal {
  const focus = standing(entries, 'focus').find(({ id }) => id === focusId);
  if (!focus) {
    const isOver = entries.some(({ replacesId }) => replacesId === focusId);
    return isOver ? OVER_ALREADY : noSuch('focus', ['focusId']);
  }
  if (focus.body.to !== null) return OVER_ALREADY;
  if (to < focus.body.from) return ENDS_BEFORE;
  const body: FocusBody = { ...focus.body, to };
  return { body, replacesId: focusId };
}

const OVER_ALREADY = refusal({
  code: 'ALREADY_SO',
  path: ['focusId'],
  message: 'This focus is over.',
  remedy: 'Nothing needs to be done.',
});

const ENDS_BEFORE = refusal({
  code: 'WINDOW_EMPTY',
  path: ['to'],
  message: 'A focus does not end before it begins.',
  remedy: 'Send its last day.',
});
