import type { Facility, SharedGround, Slot } from '#rules';

/** When and where the competitions of a meet take place; the newest revision counts. */
export interface TimetableRow {
  readonly organisationId: string;
  readonly meetId: string;
  /** From 1; a new one for each change. */
  readonly revision: number;
  readonly facilities: readonly Facility[];
  readonly sharedGrounds: readonly SharedGround[];
  readonly slots: readonly Slot[];
  /** Why something was moved; `null`: it was planned so. */
  readonly reason: string | null;
  readonly setBy: string;
  readonly setAt: string;
}

/** What somebody does at a competition. */
export type CrewPost =
  | 'referee'
  | 'chief-judge'
  | 'judge'
  | 'recorder'
  | 'measurer'
  | 'wind'
  | 'safety'
  | 'implements'
  | 'call-room'
  | 'helper';

export interface CrewMember {
  readonly post: CrewPost;
  readonly name: string;
}

/** Who works at a competition; the newest revision counts. */
export interface CrewRow {
  readonly organisationId: string;
  readonly competitionId: string;
  /** From 1; a new one for each change. */
  readonly revision: number;
  readonly members: readonly CrewMember[];
  readonly setBy: string;
  readonly setAt: string;
}
