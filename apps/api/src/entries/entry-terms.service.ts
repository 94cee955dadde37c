import {
  competitions,
  entryChanges,
  entryTerms,
  meets,
  type CompetitionRow,
  type EntryChangeRow,
  type EntryTermsRow,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Identity } from '../platform/identity/identity.js';
import type { CompetitionLimitInput, MeetEntryTermsSetInput } from './entry-terms.inputs.js';

/** Until when and how many, and what became of the entries. */
@Injectable()
export class EntryTermsService {
  constructor(private readonly database: Database) {}

  async of(organisationId: string, meetId: string): Promise<EntryTermsRow | null> {
    return this.database.read((at) => entryTerms.latest(at, organisationId, meetId));
  }

  /** Who came and who went; for directors and administrators. */
  async changesOf(
    { organisationId, id, meetId }: CompetitionRow,
    viewer: Identity,
  ): Promise<EntryChangeRow[]> {
    viewer.requireDirector(meetId);
    return this.database.read((at) => entryChanges.ofCompetition(at, organisationId, id));
  }

  async set(
    input: MeetEntryTermsSetInput,
    viewer: Identity,
  ): Promise<{ readonly row: EntryTermsRow } | { readonly refusal: UserError }> {
    const { meetId, expectedRevision, competitionLimits: limits } = input;
    viewer.requireDirector(meetId);
    const { organisationId } = viewer;
    return this.database.write(async (tx) => {
      if (!(await meets.lock(tx, organisationId, meetId))) return { refusal: notFound('meet', ['meetId']) };
      const before = await entryTerms.latest(tx, organisationId, meetId);
      const revision = before?.revision ?? 0;
      if (revision !== expectedRevision) return { refusal: versionConflict(revision, 'terms of entry') };
      const stranger = await strangerIn(tx, organisationId, meetId, limits);
      if (stranger) return { refusal: stranger };
      await entryTerms.insert(tx, {
        ...{ organisationId, meetId, revision: revision + 1, setBy: viewer.holder ?? '' },
        closesAt: input.closesAt?.toISOString() ?? null,
        mostPerClub: input.mostPerClub ?? null,
        mostPerAthlete: input.mostPerAthlete ?? null,
        competitionLimits: limits.map(({ competitionId, mostPerClub }) => ({
          competitionId,
          mostPerClub: mostPerClub ?? null,
        })),
      });
      return { row: (await entryTerms.latest(tx, organisationId, meetId))! };
    });
  }
}

/** A limit for a competition that is not of the meet, or for one twice. */
async function strangerIn(
  tx: Tx,
  organisationId: string,
  meetId: string,
  limits: readonly CompetitionLimitInput[],
): Promise<UserError | null> {
  const own = new Set((await competitions.ofMeet(tx, organisationId, meetId)).map(({ id }) => id));
  // Of one that is named twice the second is not there any more.
  const at = limits.findIndex(({ competitionId }) => !own.delete(competitionId));
  return at < 0 ? null : notFound('competition', ['competitionLimits', String(at), 'competitionId']);
}
