import type { JournalBody } from '#persistence';
import type { CompetitionSetup, EntryBody, SharedBody, VerticalBody, VerticalSetup } from '#rules';
import type { Folded } from '../platform/competition/kinds.js';
import type { RefusalParts } from '../platform/errors/user-error.types.js';

/** One entry as it reached the API. */
export interface EntryRequest {
  readonly competitionId: string;
  readonly entryId: string;
  readonly device: string | null;
  readonly deviceAt: Date | null;
  /** `null`: the entry does not depend on what the sender has seen. */
  readonly expectedVersion: number | null;
  readonly entered: Entered;
  /** A wind by itself, which a device at the gauge may give. */
  readonly isWind?: boolean;
  /** Of an entry about the start list. */
  readonly details?: ListDetails;
}

/** What goes into the start list and not into the journal, which could not be emptied of it. */
export interface ListDetails {
  readonly listedName?: string;
  readonly listedClub?: string | null;
  /** Whom the competitor is matched to; `null`: the name that was written down. */
  readonly athleteId?: string | null;
}

/**
 * What is entered: alike in every event, or in the terms of one kind of competition, where it is read in the unit of
 * the competition or cannot be read. `fields`: how the input calls what the entry calls otherwise.
 */
export type Entered =
  | { readonly in: 'any'; readonly body: SharedBody }
  | {
      readonly in: 'distance';
      readonly bodyFor: (setup: CompetitionSetup) => EntryBody | Unreadable;
      readonly fields?: FieldNames;
    }
  | {
      readonly in: 'vertical';
      readonly bodyFor: (setup: VerticalSetup) => VerticalBody | Unreadable;
      readonly fields?: FieldNames;
    };

export type FieldNames = Readonly<Record<string, string>>;

export class Unreadable {
  constructor(readonly refusal: RefusalParts) {}
}

/** The body of an entry in this competition. */
export function bodyIn(folded: Folded, entered: Entered): JournalBody | Unreadable {
  if (entered.in === 'any') return entered.body;
  if (entered.in === 'distance') {
    return folded.kind === 'distance' ? entered.bodyFor(folded.state.setup) : HAS_A_BAR;
  }
  return folded.kind === 'vertical' ? entered.bodyFor(folded.state.setup) : HAS_NO_BAR;
}

const HAS_A_BAR = new Unreadable({
  code: 'WRONG_EVENT',
  path: ['competitionId'],
  message: 'This competition is a high jump or pole vault: it has heights and no rounds.',
  remedy: 'Use jumpRecord, jumpCorrect, jumpsMove or jumpOrderSet.',
});

const HAS_NO_BAR = new Unreadable({
  code: 'WRONG_EVENT',
  path: ['competitionId'],
  message: 'This competition is a throw or a horizontal jump: it has rounds and no bar.',
  remedy: 'Use attemptRecord, attemptCorrect, attemptsMove or roundOrderSet.',
});
