import type { EventCode } from '#rules';
import type { Unit } from './rows.js';

/** Who may be entered at a meet, and until when; the newest revision counts. */
export interface EntryTermsRow {
  readonly organisationId: string;
  readonly meetId: string;
  /** From 1; a new one for each change. */
  readonly revision: number;
  /** From then on only late entries; `null`: until the first trial. */
  readonly closesAt: string | null;
  /** Competitors of one club in each competition; `null`: as many as it likes. */
  readonly mostPerClub: number | null;
  /** Competitions of one athlete; `null`: as many as there are. */
  readonly mostPerAthlete: number | null;
  /** Competitions in which a club may have another number; `null` there: as many as it likes. */
  readonly competitionLimits: readonly {
    readonly competitionId: string;
    readonly mostPerClub: number | null;
  }[];
  readonly setBy: string;
  readonly setAt: string;
}

/** Somebody who came to a start list, or was taken off it. */
export interface EntryChangeRow {
  readonly organisationId: string;
  readonly id: string;
  readonly competitionId: string;
  /** Whose line it was; it may be gone. */
  readonly competitorId: string;
  readonly kind: 'entered' | 'withdrawn';
  readonly bib: string;
  readonly athleteId: string | null;
  readonly clubId: string | null;
  /** After the entries were closed. */
  readonly isLate: boolean;
  readonly reason: string | null;
  readonly madeBy: string;
  readonly madeAt: string;
}

/** A table that came in as a whole. */
export interface TableImportRow {
  readonly organisationId: string;
  readonly id: string;
  readonly holds: 'entries' | 'past results';
  /** Of entries. */
  readonly meetId: string | null;
  /** SHA-256 of the table and of what was decided about it, 64 hexadecimal digits. */
  readonly fingerprint: string;
  /** How many lines, athletes and clubs were stored. */
  readonly counts: Readonly<Record<string, number>>;
  readonly madeBy: string;
  readonly madeAt: string;
}

/** A result of an athlete from before, or from elsewhere: a mark that stands as it was told. */
export interface PastResultRow {
  readonly organisationId: string;
  readonly id: string;
  readonly athleteId: string;
  readonly event: EventCode;
  readonly unit: Unit;
  /** In units of `unit`. */
  readonly mark: number;
  /** `+1.3` or `NWI`. */
  readonly wind: string | null;
  readonly indoor: boolean;
  readonly implementGrams: number | null;
  readonly onDate: string;
  readonly meetName: string;
  readonly place: number | null;
  /** Who says so, such as a results list or the athlete. */
  readonly source: string;
  /** `false`: only says that what it replaces is taken back. */
  readonly counts: boolean;
  readonly replacesId: string | null;
  readonly reason: string | null;
  /** Of the table that it came in, with its line; both or neither. */
  readonly importId: string | null;
  readonly importLine: number | null;
  readonly enteredBy: string;
  readonly enteredAt: string;
}
