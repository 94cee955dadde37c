import type {
  Authority,
  CombinedBody,
  CombinedEntryKind,
  CombinedEventCode,
  CombinedProgrammeCode,
  CombinedTies,
  CombinedVerdict,
  RuleSetCode,
  ScoringSex,
  Timing,
} from '#rules';
import type { CompetitionStatus, Sex } from './rows.js';

/* What the tables of combined events hold, as plain values: see `rows.ts`. */

export interface CombinedEventRow {
  readonly organisationId: string;
  readonly id: string;
  readonly meetId: string;
  readonly title: string;
  readonly programme: CombinedProgrammeCode;
  /** Whose formulas score it. */
  readonly scoredBy: ScoringSex;
  readonly categorySex: Sex | null;
  readonly categoryAge: string | null;
  readonly rules: RuleSetCode;
  readonly edition: string;
  /** What becomes of equal totals. */
  readonly ties: CombinedTies;
  /** How races are timed as a rule; each time says how it was. */
  readonly timing: Timing;
  readonly status: CompetitionStatus;
  /** Rises with every change of the combined event itself; its linked competitions have versions of their own. */
  readonly version: number;
  /** The number of entries in its journal. */
  readonly lastSequence: number;
}

export interface CombinedEntrantRow {
  readonly organisationId: string;
  readonly id: string;
  readonly combinedEventId: string;
  readonly athleteId: string | null;
  /** Only without an athlete. */
  readonly listedName: string | null;
  readonly clubId: string | null;
  /** Only without a club. */
  readonly listedClub: string | null;
  readonly bib: string;
  /** Place in the original order; there may be gaps. */
  readonly position: number;
  readonly guest: boolean;
}

/** From which competition an event is counted; the newest revision of an event is in force. */
export interface CombinedLinkRow {
  readonly organisationId: string;
  readonly combinedEventId: string;
  /** From 1, over all events of the combined event. */
  readonly revision: number;
  readonly event: CombinedEventCode;
  /** `null`: from none any more. */
  readonly competitionId: string | null;
  readonly linkedBy: string;
  readonly linkedAt: string;
}

/** A refused entry is answered and not stored. */
export type StoredCombinedVerdict = Exclude<CombinedVerdict, { readonly standing: 'refused' }>;

export interface CombinedEntryRow {
  readonly organisationId: string;
  readonly combinedEventId: string;
  /** From 1, without gaps. */
  readonly sequence: number;
  readonly entryId: string;
  readonly kind: CombinedEntryKind;
  /** `body.kind` equals `kind`. */
  readonly body: CombinedBody;
  readonly standing: StoredCombinedVerdict['standing'];
  readonly verdict: StoredCombinedVerdict;
  readonly authority: Authority;
  readonly actor: string;
  readonly device: string | null;
  /** The device's own clock, believed by nobody. */
  readonly deviceAt: string | null;
  readonly recordedAt: string;
  /** SHA-256 of what the device sent, 64 hexadecimal digits. */
  readonly fingerprint: string;
}

export interface CombinedOfficialResultRow {
  readonly organisationId: string;
  readonly combinedEventId: string;
  /** From 1; a new one for each signature after a reopening. */
  readonly revision: number;
  /** The journal is counted up to this entry. */
  readonly sequence: number;
  /** `null`: a programme that the sheet format does not have. */
  readonly sheet: object | null;
  readonly result: object;
  readonly signedBy: string;
  /** The second person; `null`: the meet demands none. */
  readonly confirmedBy: string | null;
  readonly signedAt: string;
}

/** What one person has said of a combined event, where a second one has to say the same. */
export interface CombinedRequestRow {
  readonly organisationId: string;
  readonly id: string;
  readonly combinedEventId: string;
  readonly kind: 'sign-off' | 'reopening';
  /** The version that was looked at. */
  readonly version: number;
  readonly reason: string | null;
  readonly authority: Authority;
  readonly askedBy: string;
  readonly askedAt: string;
}
