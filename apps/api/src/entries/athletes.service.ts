import {
  athletes,
  clubs,
  competitors,
  type AthleteChanges,
  type AthleteRow,
  type ClubRow,
  type NewAthlete,
  type Page,
  type Tx,
} from '#persistence';
import type { CategoryDefinition } from '#rules';
import { Injectable } from '@nestjs/common';
import { ownDefinitions } from '../platform/competition/category.js';
import type { PageArgs } from '../platform/connections/connection.js';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { CompetitionChanges, type CompetitionChange } from '../platform/live/competition-changes.js';
import { bumpAll } from './erasure.service.js';
import type { AthleteCreateInput, AthleteUpdateInput, ClubCreateInput } from './athletes.inputs.js';

/** Clubs and the athletes on record. */
@Injectable()
export class AthletesService {
  constructor(
    private readonly database: Database,
    private readonly changes: CompetitionChanges,
  ) {}

  async createClub({ id, name }: ClubCreateInput, viewer: Identity): Promise<Created<ClubRow>> {
    viewer.requireKeeper();
    const { organisationId } = viewer;
    const wanted = { organisationId, id: id ?? uuidV7(), name };
    return createOnce<ClubRow, ClubRow>(this.database, {
      wanted,
      find: (tx, clubId) => clubs.find(tx, organisationId, clubId),
      insert: async (tx) => {
        if (await clubs.findByName(tx, organisationId, name)) return NAME_TAKEN;
        await clubs.insert(tx, wanted);
        return null;
      },
    });
  }

  async create(input: AthleteCreateInput, viewer: Identity): Promise<Created<AthleteRow>> {
    viewer.requireKeeper();
    const { organisationId } = viewer;
    const wanted: NewAthlete = {
      organisationId,
      id: input.id ?? uuidV7(),
      givenName: input.givenName,
      familyName: input.familyName,
      sex: input.sex,
      birthDate: input.birthDate ?? null,
      clubId: input.clubId ?? null,
      display: input.display ?? null,
      handedness: input.handedness ?? null,
    };
    return createOnce<AthleteRow, NewAthlete>(this.database, {
      wanted,
      find: (tx, id) => athletes.find(tx, organisationId, id),
      insert: async (tx) => {
        if (await isUnknownClub(tx, organisationId, wanted.clubId)) return notFound('club', ['clubId']);
        await athletes.insert(tx, wanted);
        return null;
      },
    });
  }

  /** Whatever changes a name on a start list is a new version of that competition. */
  async update(
    { athleteId, ...input }: AthleteUpdateInput,
    viewer: Identity,
  ): Promise<{ readonly row: AthleteRow } | { readonly refusal: Refusal }> {
    viewer.requireKeeper();
    const { organisationId } = viewer;
    const done = await this.database.write(async (tx) => {
      const before = await athletes.find(tx, organisationId, athleteId);
      if (!before) return { refusal: notFound('athlete', ['athleteId']) };
      if (before.erasedAt !== null) return { refusal: ERASED };
      if (await isUnknownClub(tx, organisationId, input.clubId))
        return { refusal: notFound('club', ['clubId']) };
      const changes = changesOf(input);
      await athletes.update(tx, organisationId, athleteId, changes);
      return { row: { ...before, ...changes }, changed: await bumpOf(tx, organisationId, athleteId) };
    });
    if ('refusal' in done) return done;
    for (const change of done.changed) this.changes.announce(change);
    return done;
  }

  async find(athleteId: string, viewer: Identity): Promise<AthleteRow | null> {
    viewer.requireSightOf(athleteId);
    return this.database.read((at) => athletes.find(at, viewer.organisationId, athleteId));
  }

  async findClub(clubId: string, viewer: Identity): Promise<ClubRow | null> {
    return this.database.read((at) => clubs.find(at, viewer.organisationId, clubId));
  }

  async page({ first, after }: PageArgs, viewer: Identity): Promise<Page<AthleteRow>> {
    viewer.requireKeeper();
    return this.database.read((at) => athletes.page(at, viewer.organisationId, { first, after }));
  }

  async clubPage({ first, after }: PageArgs, viewer: Identity): Promise<Page<ClubRow>> {
    return this.database.read((at) => clubs.page(at, viewer.organisationId, { first, after }));
  }

  /** Age categories of the organisation's own. */
  async definitionsOf(organisationId: string): Promise<CategoryDefinition[]> {
    return this.database.read((at) => ownDefinitions(at, organisationId));
  }

  /** For each of these athletes the club. One statement. */
  async clubsOf(of: readonly AthleteRow[]): Promise<(ClubRow | null)[]> {
    const organisationId = of[0]?.organisationId;
    if (organisationId === undefined) return [];
    const ids = of.flatMap(({ clubId }) => clubId ?? []);
    const rows = await this.database.read((at) => clubs.byIds(at, organisationId, ids));
    return of.map(({ clubId }) => rows.find(({ id }) => id === clubId) ?? null);
  }
}

const ERASED = refusal({
  code: 'ERASED',
  path: ['athleteId'],
  message: 'The athlete was erased, and what is kept names nobody.',
  remedy: 'Make a new athlete if somebody competes again and wants to be on record.',
});

const NAME_TAKEN = refusal({
  code: 'NAME_TAKEN',
  path: ['name'],
  message: 'There is a club of that name.',
  remedy: 'Use that club, or tell the two apart by their names.',
});

async function isUnknownClub(
  tx: Tx,
  organisationId: string,
  clubId: string | null | undefined,
): Promise<boolean> {
  return typeof clubId === 'string' && (await clubs.find(tx, organisationId, clubId)) === null;
}

/** Names cannot be emptied, so null leaves them; the other fields take null as it is. */
function changesOf(input: Omit<AthleteUpdateInput, 'athleteId'>): AthleteChanges {
  return {
    ...(isGiven(input.givenName) && { givenName: input.givenName }),
    ...(isGiven(input.familyName) && { familyName: input.familyName }),
    ...(input.birthDate !== undefined && { birthDate: input.birthDate }),
    ...(input.clubId !== undefined && { clubId: input.clubId }),
    ...(input.display !== undefined && { display: input.display }),
    ...(input.handedness !== undefined && { handedness: input.handedness }),
  };
}

async function bumpOf(tx: Tx, organisationId: string, athleteId: string): Promise<CompetitionChange[]> {
  const entered = await competitors.ofAthlete(tx, organisationId, athleteId);
  return bumpAll(
    tx,
    organisationId,
    entered.map(({ competitionId }) => competitionId),
  );
}
