import { Injectable } from '@nestjs/common';
import { proceedings } from '#persistence';
import { isComplete, resultStateIn } from '../platform/competition/proceedings.js';
import { forbidden } from '../platform/errors/api-error.js';
import { refusal } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { ProceedingsService, type ProceedingOutcome } from './proceedings.service.js';
import type { ResultPostInput } from './protests.inputs.js';
import { inFuture } from './moments.js';

/** Results are announced: from then on the time for protests runs. */
@Injectable()
export class PostingService {
  constructor(private readonly service: ProceedingsService) {}

  post(viewer: Identity, input: ResultPostInput): Promise<ProceedingOutcome> {
    const { entryId: id, competitionId, expectedVersion, place = null, incomplete = null } = input;
    const postedAt = input.postedAt ?? new Date();
    return this.service.proceed(viewer, input, {
      earlier: ({ proceedings: { postings } }) => {
        const there = postings.find((posting) => posting.id === id);
        if (!there) return null;
        return there.place === place && there.incomplete === incomplete ? 'same' : 'other';
      },
      store: async (tx, loaded, written) => {
        if (written.authority === 'official') throw forbidden('Only a referee or director may do this.');
        const { row } = loaded;
        if (expectedVersion !== row.version) return versionConflict(row.version);
        const future = inFuture(postedAt, 'postedAt');
        if (future) return future;
        if (resultStateIn(loaded).postedAt !== null) return ALREADY_SO;
        if (incomplete === null && !isComplete(loaded)) return NOT_COMPLETE;
        await proceedings.post(tx, {
          ...{ organisationId: row.organisationId, id, competitionId, place, incomplete },
          ...{ sequence: row.lastSequence, postedAt: postedAt.toISOString(), ...written },
        });
        return loaded;
      },
    });
  }
}

const ALREADY_SO = refusal({
  code: 'ALREADY_SO',
  message: 'This result is posted, and nothing has changed since.',
  remedy: 'Nothing needs to be done.',
});

const NOT_COMPLETE = refusal({
  code: 'NOT_COMPLETE',
  path: ['incomplete'],
  message: 'Trials are outstanding.',
  remedy: 'Enter them, or say why there will be none.',
});
