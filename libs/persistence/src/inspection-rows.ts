import type { Authority, Finding, InspectionOutcome, Measured, ThrowEventCode } from '#rules';

/* What the tables of check-in and inspection hold, as plain values: see rows.ts. */

/** An implement on the organisation's register. With neither club nor athlete it is of the meet's pool. */
export interface ImplementRow {
  readonly organisationId: string;
  readonly id: string;
  /** At which it was registered. */
  readonly meetId: string;
  readonly event: ThrowEventCode;
  /** As what it is registered. */
  readonly grams: number;
  /** As it is written on it. */
  readonly label: string;
  readonly clubId: string | null;
  readonly athleteId: string | null;
  readonly authority: Authority;
  readonly registeredBy: string;
  readonly registeredAt: string;
}

/** One look at an implement at a meet; one that nothing replaces counts. */
export interface InspectionRow {
  readonly organisationId: string;
  readonly id: string;
  readonly meetId: string;
  readonly implementId: string;
  /** From 1, for each implement at each meet. */
  readonly sequence: number;
  readonly kind: 'inspection' | 'recheck';
  /** Exactly of a re-check. */
  readonly cause: 'record' | 'referee' | null;
  /** Whose specification it was held against. */
  readonly competitionId: string | null;
  /** After which it was looked at again. */
  readonly attemptId: string | null;
  readonly grams: Measured['grams'];
  readonly mm: Measured['mm'];
  readonly outcome: InspectionOutcome;
  /** As they were decided then. */
  readonly findings: readonly Finding[];
  /** The officials keep the implement. */
  readonly keptBack: boolean;
  readonly note: string | null;
  readonly replacesId: string | null;
  /** Why it replaces another one, and only then. */
  readonly reason: string | null;
  readonly authority: Authority;
  readonly inspectedBy: string;
  readonly device: string | null;
  readonly deviceAt: string | null;
  readonly inspectedAt: string;
}

/** A competitor reported, or turned out not to be there; the last one counts. */
export interface CheckInRow {
  readonly organisationId: string;
  readonly competitorId: string;
  /** From 1, for each competitor. */
  readonly sequence: number;
  readonly id: string;
  readonly isPresent: boolean;
  /** Came after the first trial of the competition. */
  readonly isLate: boolean;
  readonly note: string | null;
  readonly authority: Authority;
  readonly enteredBy: string;
  readonly device: string | null;
  readonly deviceAt: string | null;
  readonly recordedAt: string;
}
