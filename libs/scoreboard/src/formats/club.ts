import type { CompetitionHead, MeetHead, ResultLine } from './shared.js';

export const CLUB_FORMAT = 'sectorline-public-club/1';
export const ATHLETE_FORMAT = 'sectorline-public-athlete/1';

/** How those who compete for one club stand, the latest meet first; as plain JSON. */
export interface PublicClub {
  readonly format: typeof CLUB_FORMAT;
  readonly id: string;
  readonly version: number;
  readonly name: string;
  readonly meets: readonly ClubMeet[];
}

export interface ClubMeet {
  readonly meet: MeetHead;
  readonly competitions: readonly ClubCompetition[];
}

export interface ClubCompetition extends CompetitionHead {
  readonly lines: readonly ResultLine[];
}

/**
 * What somebody has come to who is shown by a whole name: adults, and whoever decided so. Children, and all whose age is
 * not known, have no such page unless they decided so.
 */
export interface PublicAthlete {
  readonly format: typeof ATHLETE_FORMAT;
  readonly id: string;
  readonly version: number;
  readonly name: string;
  readonly meets: readonly ClubMeet[];
}
