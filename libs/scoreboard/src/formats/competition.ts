import type { MeetHead } from './shared.js';

/*
 * What everybody may see of one competition, as plain JSON. There is no birth date, no contact, no note and no reason of
 * a failure here to leak; `name` is what the meet shows of a name. Marks, heights and winds are decimal strings in the
 * unit of the competition, instants are RFC 3339 in UTC, ids are opaque.
 */

export const COMPETITION_FORMAT = 'sectorline-public-competition/1';

/** Readers accept states that they do not know and say nothing of them. */
export const RESULT_STATES = [
  'scheduled',
  'running',
  'unofficial',
  'posted',
  'under protest',
  'official',
  'amended',
] as const;
/**
 * `unofficial`: complete, not signed. `posted`: complete and put up, so that the time for protests runs. `under
 * protest`: a protest may still change places. `amended`: signed again after it had been signed.
 */
export type ResultState = (typeof RESULT_STATES)[number];

export interface PublicCompetition {
  readonly format: typeof COMPETITION_FORMAT;
  readonly id: string;
  /** Rises with every change, never falls: whoever has a newer one throws an older one away. */
  readonly version: number;
  /** Of the latest entry. */
  readonly changedAt: string | null;
  readonly meet: MeetHead;
  readonly title: string;
  /** Such as `discus`. */
  readonly event: string;
  /** In rounds, or at heights. */
  readonly kind: 'rounds' | 'bar';
  readonly stage: 'qualification' | 'final';
  readonly isIndoor: boolean;
  /** Rule set and edition that decide. */
  readonly rules: string;
  readonly unit: 'cm' | 'quarter-inch';
  /** `W`, `M` or `X`. */
  readonly sex: string | null;
  /** Such as `U18`. */
  readonly age: string | null;
  readonly implementGrams: number | null;
  readonly startsAt: string | null;
  readonly delay: Delay | null;
  /** Nobody is called until the all-clear. */
  readonly stop: SafetyStop | null;
  readonly state: ResultState;
  /** Questions to the referee are open, so places may still change. */
  readonly isDisputed: boolean;
  /** It is decided by a jump-off for first place now. */
  readonly isJumpOff: boolean;
  /** Of whoever is up; at a bar the trial at the height, in a jump-off its round. */
  readonly round: number | null;
  /** `null` at a bar. */
  readonly rounds: number | null;
  readonly bar: Bar | null;
  /** Who is up and the next ones, three at most. */
  readonly calls: readonly Call[];
  /** What a qualification asks for. */
  readonly qualifying: { readonly standard: string; readonly fill: number } | null;
  /** Who goes on after a round, as things stand. */
  readonly cuts: readonly Cut[];
  /** At a bar, rising. */
  readonly heights: readonly string[];
  readonly rows: readonly Row[];
  /** Places as they would be if every protest succeeded; `null`: there is none. */
  readonly ifProtestsSucceed: readonly ProtestedPlace[] | null;
}

/** It begins later than planned. */
export interface Delay {
  readonly plannedAt: string;
  readonly startsAt: string;
  readonly reason: string;
}

/** Why nobody is called, no closer than the crowd has to know. */
export interface SafetyStop {
  readonly cause: 'lightning' | 'weather' | 'safety';
  readonly since: string;
  /** The earliest moment at which it may go on; the referee decides. */
  readonly notBefore: string | null;
}

/** Where the bar is. */
export interface Bar {
  readonly height: string;
  readonly next: string | null;
}

/** A trial that is to be called. */
export interface Call {
  readonly competitor: string;
  readonly bib: string;
  readonly name: string;
  readonly club: string | null;
  readonly round: number;
  readonly flight: string | null;
  readonly height: string | null;
}

export interface Cut {
  readonly afterRound: number;
  /** The mark of the last one who goes on now; `null`: nobody has to be beaten yet. */
  readonly line: string | null;
  /** Competitors, in ranking order. */
  readonly through: readonly string[];
}

export interface Row {
  readonly competitor: string;
  /** Leads to the public results of the athlete; `null`: there are none under a whole name. */
  readonly athlete: string | null;
  readonly bib: string;
  readonly name: string;
  readonly club: string | null;
  readonly isGuest: boolean;
  /** `null` while there is no valid mark, and for guests. */
  readonly place: number | null;
  readonly isEqual: boolean;
  readonly mark: string | null;
  readonly wind: string | null;
  readonly isWindLegal: boolean | null;
  /** `NM`, `DQ`, `DNS` or `GUEST`. */
  readonly status: string | null;
  /** `Q`, `q`, `qR`, `qJ` or `qD`. */
  readonly qualified: string | null;
  /** Why the row stands where it stands, as an English sentence with the rule. */
  readonly reason: string;
  readonly rule: string | null;
  /** The same in parts, for readers who say it in another language; `null`: there is no mark yet. */
  readonly why: Why | null;
  /** Round by round; empty at a bar. */
  readonly trials: readonly Trial[];
  /** One for each height, in the same order, and the jump-off; empty in rounds. */
  readonly heights: readonly HeightCell[];
  readonly jumpOff: readonly HeightCell[];
  /** What is needed with the next trial; `null`: there is none that counts. */
  readonly needs: Needs | null;
}

export interface Trial {
  readonly round: number;
  /** As on a field card: the mark, `X`, `-`, `r`, `O` for valid and not measured. */
  readonly cell: string;
  /** `+1.3`, `NWI`, or nothing. */
  readonly wind: string | null;
  readonly isWindPending: boolean;
  /** The mark that is held under protest. */
  readonly protested: string | null;
  /** The best one of the series, which the result shows. */
  readonly isBest: boolean;
}

export interface HeightCell {
  readonly height: string;
  /** `O`, `XXO`, `X-`, `-`, `Xr`; `null`: nothing yet. */
  readonly cell: string | null;
}

/** What separates a row from the one placed just before. */
export type Why = MarkWhy | HeightWhy;

export interface MarkWhy {
  readonly by: 'mark';
  /** The mark that decides, from 1; 0: nobody is before; `null`: nothing separates. */
  readonly nth: number | null;
  /** The best marks on which the two are level. */
  readonly level: readonly string[];
  readonly own: string | null;
  readonly other: string | null;
  /** A valid trial was not measured, so further marks decide nothing. */
  readonly isUndecidable: boolean;
}

export interface HeightWhy {
  readonly by: 'height';
  readonly decidedBy: 'first' | 'height' | 'failures at height' | 'total failures' | 'jump-off' | 'equal';
  readonly own: Countback;
  readonly other: Countback | null;
  readonly isJumpedOff: boolean;
}

export interface Countback {
  readonly height: string;
  readonly failuresAtHeight: number;
  readonly totalFailures: number;
}

export interface Needs {
  /** The nearest better place first. */
  readonly places: readonly NeededPlace[];
  readonly cut: NeededCut | null;
  /** In a qualification: what reaches the standard. */
  readonly standard: string | null;
}

export interface NeededPlace {
  readonly place: number;
  readonly mark: string;
  /** At a bar: the trial that is still early enough. */
  readonly trial: number | null;
  readonly isShared: boolean;
}

export interface NeededCut {
  /** `null` in a qualification. */
  readonly afterRound: number | null;
  readonly isIn: boolean;
  readonly mark: string | null;
  readonly isEqualEnough: boolean | null;
}

export interface ProtestedPlace {
  readonly competitor: string;
  readonly place: number | null;
  readonly mark: string | null;
}
