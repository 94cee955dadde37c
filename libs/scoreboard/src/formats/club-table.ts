import type { MeetHead } from './shared.js';

export const CLUB_TABLE_FORMAT = 'sectorline-public-club-table/1';

/** The clubs of a meet as they stand, as plain JSON. Points are exact: `7.5`, or a fraction such as `19/3`. */
export interface PublicClubTable {
  readonly format: typeof CLUB_TABLE_FORMAT;
  /** Of the meet. */
  readonly id: string;
  readonly version: number;
  readonly meet: MeetHead;
  /** Something that counts is not signed off. */
  readonly isProvisional: boolean;
  /** Titles of what is not signed off. */
  readonly open: readonly string[];
  /** Everything together. */
  readonly clubs: readonly ClubLine[];
  readonly divisions: readonly { readonly name: string; readonly clubs: readonly ClubLine[] }[];
  /** Where the points come from. */
  readonly events: readonly ScoredEvent[];
}

export interface ClubLine {
  readonly place: number;
  readonly club: string;
  readonly points: string;
  /** Of clubs that are level on points: what separates them, in English. */
  readonly reason: string | null;
}

export interface ScoredEvent {
  readonly title: string;
  readonly isProvisional: boolean;
  /** It was entered by hand, not counted here. */
  readonly isEntered: boolean;
  readonly points: readonly { readonly club: string; readonly points: string }[];
}
