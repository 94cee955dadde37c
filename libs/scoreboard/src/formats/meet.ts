import type { Delay, SafetyStop } from './competition.js';
import type { CompetitionHead, MeetHead, ResultLine } from './shared.js';

export const MEET_FORMAT = 'sectorline-public-meet/1';

/** What everybody may see of a meet at a glance, as plain JSON. */
export interface PublicMeet {
  readonly format: typeof MEET_FORMAT;
  readonly id: string;
  /** Rises with every change of a competition of the meet, never falls. */
  readonly version: number;
  readonly changedAt: string | null;
  readonly meet: MeetHead;
  /** By time; those without a time last. */
  readonly competitions: readonly MeetCompetition[];
  /** Points for clubs are counted. */
  readonly hasClubTable: boolean;
}

export interface MeetCompetition extends CompetitionHead {
  readonly sex: string | null;
  readonly age: string | null;
  readonly stage: 'qualification' | 'final';
  /** Where, as the timetable names it. */
  readonly facility: string | null;
  /** When it is expected to end. */
  readonly endsAt: string | null;
  readonly competitors: number;
  readonly delay: Delay | null;
  readonly stop: SafetyStop | null;
  readonly round: number | null;
  readonly rounds: number | null;
  /** At a bar: where it is. */
  readonly height: string | null;
  /** The first three places; more when they are shared. */
  readonly leaders: readonly ResultLine[];
}
