import { randomInt } from 'node:crypto';
import {
  athletes,
  combinedEntrants,
  combinedEvents,
  competitions,
  competitors,
  type AthleteRow,
  type Pseudonym,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { ErasureLog, type Erasure } from '../platform/erasures/erasure-log.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { CompetitionChanges, type CompetitionChange } from '../platform/live/competition-changes.js';
import type { AthleteEraseInput } from './athletes.inputs.js';

export interface Erased {
  readonly row: AthleteRow;
  /** Lines of lists from which a name that was written by hand was taken. */
  readonly lines: number;
  readonly replayed: boolean;
}

/** Letters and digits that nobody reads as another one. */
const ALPHABET = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
const CODE_LENGTH = 6;

/**
 * Takes away who an athlete is: names, date of birth, hand. What he did stays under a pseudonym that says nothing. It
 * cannot be taken back, and it is done again after a backup from before was restored.
 */
@Injectable()
export class ErasureService {
  constructor(
    private readonly database: Database,
    private readonly changes: CompetitionChanges,
    private readonly log: ErasureLog,
  ) {}

  async erase(
    { athleteId, alsoListedAs }: AthleteEraseInput,
    viewer: Identity,
  ): Promise<Erased | { readonly refusal: Refusal }> {
    viewer.requireAdmin();
    const { organisationId } = viewer;
    const done = await this.database.write(async (tx) => {
      const before = await athletes.find(tx, organisationId, athleteId);
      if (!before) return { refusal: notFound('athlete', ['athleteId']) };
      const pseudonym = before.erasedAt === null ? newPseudonym() : before;
      const { givenName, familyName } = pseudonym;
      const names = alsoListedAs ?? [];
      const work = { organisationId, athleteId, pseudonym: { givenName, familyName }, names };
      const { changed, isNew, ...ids } = await eraseIn(tx, { ...work, competitorIds: [], entrantIds: [] });
      const erasure = { ...work, ...ids, at: new Date().toISOString() };
      // Before the commit: what was promised must outlive the database, and is done again where the commit failed.
      await this.log.append(entryOf(erasure));
      const row = (await athletes.find(tx, organisationId, athleteId))!;
      const lines = ids.competitorIds.length + ids.entrantIds.length;
      return { row, lines, replayed: !isNew, changed };
    });
    if ('refusal' in done) return done;
    for (const change of done.changed) this.changes.announce(change);
    return done;
  }

  /** After a start: whoever was erased before a backup was restored is erased in it as well. How many were. */
  async replay(): Promise<number> {
    let again = 0;
    for (const erasure of await this.log.read()) {
      const { isNew, changed } = await this.database.write((tx) => eraseIn(tx, { ...erasure, names: [] }));
      if (isNew || changed.length > 0) again += 1;
      for (const change of changed) this.changes.announce(change);
    }
    return again;
  }
}

interface Work extends Omit<Erasure, 'at'> {
  /** As the name was written by hand on lists. */
  readonly names: readonly string[];
}

interface Done extends Pick<Erasure, 'competitorIds' | 'entrantIds'> {
  /** Nobody had erased the athlete before. */
  readonly isNew: boolean;
  readonly changed: readonly CompetitionChange[];
}

async function eraseIn(tx: Tx, { organisationId, athleteId, pseudonym, names, ...ids }: Work): Promise<Done> {
  const before = await athletes.find(tx, organisationId, athleteId);
  const isNew = before !== null && before.erasedAt === null;
  if (isNew) await athletes.erase(tx, organisationId, athleteId, pseudonym);
  const listed = { ids: ids.competitorIds, names };
  const lines = await competitors.eraseListedNames(tx, organisationId, listed);
  const combined = { ids: ids.entrantIds, names };
  const entrants = await combinedEntrants.eraseListedNames(tx, organisationId, combined);
  for (const id of new Set(entrants.map(({ combinedEventId }) => combinedEventId)))
    await combinedEvents.bumpVersion(tx, organisationId, id);
  const entered = isNew ? await competitors.ofAthlete(tx, organisationId, athleteId) : [];
  const touched = [...entered, ...lines].map(({ competitionId }) => competitionId);
  return {
    isNew,
    changed: await bumpAll(tx, organisationId, touched),
    competitorIds: lines.map(({ id }) => id),
    entrantIds: entrants.map(({ id }) => id),
  };
}

/** In the order of ids, so that two who change the same competitions cannot wait for each other. */
export async function bumpAll(
  tx: Tx,
  organisationId: string,
  competitionIds: readonly string[],
): Promise<CompetitionChange[]> {
  const changed: CompetitionChange[] = [];
  for (const competitionId of [...new Set(competitionIds)].sort()) {
    const version = await competitions.bumpVersion(tx, organisationId, competitionId);
    changed.push({ competitionId, version });
  }
  return changed;
}

function entryOf({ at, organisationId, athleteId, pseudonym, competitorIds, entrantIds }: Erasure): Erasure {
  return { at, organisationId, athleteId, pseudonym, competitorIds, entrantIds };
}

function newPseudonym(): Pseudonym {
  const letters = Array.from({ length: CODE_LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]!);
  return { givenName: 'Athlete', familyName: letters.join('') };
}
