import type { CompetitionSetup, EntryBody } from '#rules';
import type { RefusalParts } from '../platform/errors/user-error.types.js';

/** One entry as it reached the API. */
export interface EntryRequest {
  readonly competitionId: string;
  readonly entryId: string;
  readonly device: string | null;
  readonly deviceAt: Date | null;
  /** `null`: the entry does not depend on what the sender has seen. */
  readonly expectedVersion: number | null;
  /** What is entered, in the unit of the competition; or why it cannot be read there. */
  readonly bodyFor: (setup: CompetitionSetup) => EntryBody | Unreadable;
}

export class Unreadable {
  constructor(readonly refusal: RefusalParts) {}
}
