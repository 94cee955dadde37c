import type { Authority, ClubTies, Division, RaceTime, ScoringPresetCode } from '#rules';

/* What the tables of team scoring hold; see `rows.ts`. */

/** How a meet is scored for its clubs; the newest revision counts. */
export interface MeetScoringRow {
  readonly organisationId: string;
  readonly meetId: string;
  /** From 1; a new one for each change. */
  readonly revision: number;
  /** Exactly without `places`. */
  readonly preset: ScoringPresetCode | null;
  /** Points per place as decimal strings. */
  readonly places: { readonly individual: readonly string[]; readonly relay: readonly string[] } | null;
  /** `null`: as many as have somebody in the meet. */
  readonly teams: number | null;
  readonly scorersPerClub: number | null;
  readonly relaysPerClub: number | null;
  readonly nonScorers: 'out' | 'hold';
  readonly clubTies: ClubTies;
  readonly divisions: readonly Division[];
  readonly setBy: string;
  readonly setAt: string;
}

/** One line of an entered result. */
export interface EnteredLine {
  /** Of the athlete, or what the relay team is called; never a name. */
  readonly bib: string;
  /** `null`: runs for no club. */
  readonly club: string | null;
  /** Exactly without `status`. */
  readonly place: number | null;
  readonly status: 'DNS' | 'DNF' | 'DQ' | null;
  readonly time: RaceTime | null;
  /** Tenths of m/s. */
  readonly wind: number | 'NWI' | null;
}

/** A result that was entered and not counted here; one that nothing replaces counts. */
export interface EnteredResultRow {
  readonly organisationId: string;
  readonly id: string;
  readonly meetId: string;
  readonly title: string;
  readonly isRelay: boolean;
  readonly categorySex: Division['sex'];
  readonly categoryAge: string | null;
  /** Best first; empty: the result is taken back. */
  readonly lines: readonly EnteredLine[];
  readonly replacesId: string | null;
  /** Why it replaces another one, and only then. */
  readonly reason: string | null;
  readonly authority: Authority;
  readonly enteredBy: string;
  readonly enteredAt: string;
}
