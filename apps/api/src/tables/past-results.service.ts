import { pastResults, type AthleteRow, type Page, type PastResultRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import type { PageArgs } from '../platform/connections/connection.js';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { PastResultWithdrawInput } from './past-results.inputs.js';

/** Results of athletes from before, or from elsewhere. */
@Injectable()
export class PastResultsService {
  constructor(private readonly database: Database) {}

  /** For those who may see the athlete, the latest first. */
  async page(
    { organisationId, id }: AthleteRow,
    { first, after }: PageArgs,
    viewer: Identity,
  ): Promise<Page<PastResultRow>> {
    viewer.requireSightOf(id);
    return this.database.read((at) => pastResults.page(at, organisationId, id, { first, after }));
  }

  /** Takes a result back: a row that says so, and what it took back. */
  async withdraw(
    { id, replacesId, reason }: PastResultWithdrawInput,
    viewer: Identity,
  ): Promise<Created<PastResultRow>> {
    viewer.requireKeeper();
    const { organisationId, holder } = viewer;
    const before = await this.database.read((at) => pastResults.find(at, organisationId, replacesId));
    if (!before?.counts) return { refusal: notFound('past result', ['replacesId']) };
    const { enteredAt: _, enteredBy: __, ...told } = before;
    const wanted = {
      ...{ ...told, id: id ?? uuidV7(), counts: false, replacesId, reason },
      ...{ importId: null, importLine: null },
    };
    return createOnce<PastResultRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, ownId) => pastResults.find(tx, organisationId, ownId),
      insert: async (tx) => {
        if (await pastResults.replacementOf(tx, organisationId, replacesId)) return TAKEN_BACK;
        await pastResults.insert(tx, [{ ...wanted, enteredBy: holder ?? '' }]);
        return null;
      },
    });
  }
}

const TAKEN_BACK = refusal({
  code: 'REPLACED_ALREADY',
  path: ['replacesId'],
  message: 'The result has been taken back already.',
  remedy: 'Read the past results of the athlete; nothing is left to do.',
});
