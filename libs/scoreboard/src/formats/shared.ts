import type { ResultState } from './competition.js';

/* What the public formats have in common. */

/** By which a meet is named. Dates are `YYYY-MM-DD` at the place of the meet. */
export interface MeetHead {
  readonly id: string;
  readonly name: string;
  readonly venue: string;
  readonly startsOn: string;
  readonly endsOn: string;
  /** IANA name. */
  readonly timeZone: string;
}

/** By which a competition is named, and where it is. */
export interface CompetitionHead {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  readonly event: string;
  readonly startsAt: string | null;
  readonly state: ResultState;
}

/** What one competitor has come to in one competition, as it stands. */
export interface ResultLine {
  readonly competitor: string;
  readonly athlete: string | null;
  readonly bib: string;
  readonly name: string;
  readonly club: string | null;
  readonly place: number | null;
  readonly isEqual: boolean;
  readonly mark: string | null;
  readonly wind: string | null;
  readonly status: string | null;
}
