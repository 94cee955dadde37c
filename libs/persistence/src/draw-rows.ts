import type { DrawEntry, DrawMethod } from '#rules';

/* What the tables of draws and qualifications hold; as in `rows.ts`. */

/** One flight in the order of competition, by bib. */
export interface DrawnFlight {
  /** `null`: the field is one flight. */
  readonly label: string | null;
  readonly bibs: readonly string[];
}

/** A draw of the start list of a competition; the newest one is in force. */
export interface DrawRow {
  readonly organisationId: string;
  readonly id: string;
  readonly competitionId: string;
  /** From 1; a new one for each draw of the competition. */
  readonly number: number;
  /** By name and version. */
  readonly procedure: string;
  readonly seed: string;
  readonly method: DrawMethod;
  readonly clubmatesApart: boolean;
  /** By bib; a mark or a club only where it was used. */
  readonly entries: readonly DrawEntry[];
  readonly flights: readonly DrawnFlight[];
  /** Why it was drawn again, or before everything was there. */
  readonly reason: string | null;
  readonly drawnBy: string;
  readonly drawnAt: string;
  /** Of which the competition is the final; `null`: it was drawn by itself. */
  readonly qualificationId: string | null;
}

/** What became of a drawn start list: `lines` are those that changed, or the whole list when set by hand. */
export interface DrawAmendmentRow {
  readonly organisationId: string;
  readonly drawId: string;
  /** From 1. */
  readonly number: number;
  readonly kind: 'entered late' | 'withdrawn' | 'set by hand';
  readonly lines: readonly { readonly bib: string; readonly flight: string | null }[];
  readonly madeBy: string;
  readonly madeAt: string;
}

/** Competitions that are the groups of one qualification. */
export interface QualificationRow {
  readonly organisationId: string;
  readonly id: string;
  readonly meetId: string;
  readonly title: string;
  /** `null`: not set up yet. */
  readonly finalId: string | null;
  /** In their order. */
  readonly groupIds: readonly string[];
}
