import {
  enteredResults,
  meets,
  type EnteredResultRow,
  type MeetRow,
  type NewEnteredResult,
  type Tx,
} from '#persistence';
import { parseRaceTime, parseWind } from '#rules';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { EnteredLineInput, EnteredResultSetInput } from './entered-results.inputs.js';
import { enteredProblems } from './entered-problems.js';
import { countingOf } from './entered-view.js';

/** Results that somebody enters, so that the score of a meet is whole. */
@Injectable()
export class EnteredResultsService {
  constructor(private readonly database: Database) {}

  /** Adds a result, or one that replaces another; all problems at once. */
  async set(
    input: EnteredResultSetInput,
    viewer: Identity,
  ): Promise<Created<EnteredResultRow> | { readonly refusals: Refusal[] }> {
    // A meet has directors and referees; officials belong to a competition.
    const authority = viewer.requireCapacity({
      id: input.meetId,
      meetId: input.meetId,
      callingGroupId: null,
    });
    const refusals = enteredProblems(input);
    if (refusals.length > 0) return { refusals };
    const wanted = newResult(input, viewer.organisationId);
    return createOnce<EnteredResultRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => enteredResults.find(tx, viewer.organisationId, id),
      insert: async (tx) => {
        const refused = await placeProblem(tx, wanted);
        if (refused) return refused;
        await enteredResults.insert(tx, { ...wanted, authority, enteredBy: viewer.holder ?? '' });
        return null;
      },
    });
  }

  /** Those of a meet that count, in the order of entering. */
  async of({ organisationId, id }: MeetRow): Promise<EnteredResultRow[]> {
    return countingOf(await this.database.read((at) => enteredResults.ofMeet(at, organisationId, id)));
  }
}

type Wanted = Omit<NewEnteredResult, 'authority' | 'enteredBy'>;

/** What stands in the way of the meet, or of what is replaced. */
async function placeProblem(tx: Tx, { organisationId, meetId, replacesId }: Wanted): Promise<Refusal | null> {
  if (!(await meets.find(tx, organisationId, meetId))) return notFound('meet', ['meetId']);
  if (replacesId === null) return null;
  const replaced = await enteredResults.find(tx, organisationId, replacesId);
  if (replaced?.meetId !== meetId) return notFound('entered result', ['replacesId']);
  if (!(await enteredResults.replacementOf(tx, organisationId, replacesId))) return null;
  return refusal({
    code: 'REPLACED_ALREADY',
    path: ['replacesId'],
    message: 'Another result has replaced this one.',
    remedy: 'Read the entered results of the meet, and replace the one that counts now.',
  });
}

function newResult(input: EnteredResultSetInput, organisationId: string): Wanted {
  return {
    organisationId,
    id: input.id ?? uuidV7(),
    meetId: input.meetId,
    title: input.title,
    isRelay: input.isRelay,
    categorySex: input.categorySex ?? null,
    categoryAge: input.categoryAge ?? null,
    lines: input.lines.map(lineOf),
    replacesId: input.replacesId ?? null,
    reason: input.reason ?? null,
  };
}

function lineOf({
  bib,
  club,
  place,
  status,
  time,
  wind,
}: EnteredLineInput): EnteredResultRow['lines'][number] {
  return {
    bib,
    club: club ?? null,
    place: place ?? null,
    status: status ?? null,
    time: time ? parseRaceTime(time) : null,
    wind: wind ? parseWind(wind) : null,
  };
}
