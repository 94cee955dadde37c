import type { AdmittedBy } from '../codes.js';
import type { FoulCode } from '../fouls.js';
import type { Wind } from '../quantities/wind.js';

/**
 * One entry of a competition's journal: what somebody did or decided. Nothing in a journal is changed or removed;
 * what replaces an earlier entry names it. `competitor` is the competitor's key in the competition (not the bib,
 * which may be swapped). Ids are made by the device that makes the entry.
 */
export type Entry = EntryHead & EntryBody;

export interface EntryHead {
  readonly id: string;
  /** With which right it was made; decides whether a correction counts at once or waits for the referee. */
  readonly by: Authority;
  /** Who made it, as an opaque name: an official may take back only what he entered himself. */
  readonly actor: string;
}

/** official: at the circle; referee and director: may decide. */
export type Authority = 'official' | 'referee' | 'director';

export type EntryBody =
  | AttemptEntry
  | WindEntry
  | CorrectionEntry
  | MoveEntry
  | ReversalEntry
  | ReplacementEntry
  | RulingEntry
  | StartEntry
  | DisqualificationEntry
  | ReinstatementEntry
  | AdmissionEntry
  | OrderEntry
  | SignOffEntry
  | ReopeningEntry;

export type EntryKind = EntryBody['kind'];

/** What was seen at the circle. `mark` in whole units of the competition, exactly for `valid`. */
export interface Judgement {
  readonly outcome: 'valid' | 'unmeasured' | 'foul' | 'pass' | 'retired';
  readonly mark: number | null;
  /** `null`: none given (outdoors in a horizontal jump the same as `pending`). */
  readonly wind: Wind | null;
  readonly foul: FoulCode | null;
  /** A failure protested on the spot and measured all the same: held until ruled. Only with `foul`. */
  readonly protested: number | null;
  /** Mass of the implement used, if it was noted. */
  readonly implementGrams: number | null;
}

/** A trial, with the round the device believed it to be (1-based). */
export interface AttemptEntry extends Judgement {
  readonly kind: 'attempt';
  readonly competitor: string;
  readonly round: number;
}

/** The wind of a trial, read or called later. */
export interface WindEntry {
  readonly kind: 'wind';
  readonly attempt: string;
  readonly wind: number | 'NWI';
}

/** The trial was judged, measured or written wrongly: this is what it was. */
export interface CorrectionEntry extends Judgement {
  readonly kind: 'correction';
  readonly attempt: string;
  readonly reason: string;
}

/** Trials entered on the wrong line: each named one belongs there. One entry for a swap or a whole shift. */
export interface MoveEntry {
  readonly kind: 'move';
  readonly moves: readonly {
    readonly attempt: string;
    readonly competitor: string;
    readonly round: number;
  }[];
  readonly reason: string;
}

/** The named entry should never have been made; the state is as if it had not been. */
export interface ReversalEntry {
  readonly kind: 'reversal';
  readonly entry: string;
  readonly reason: string;
}

/** The competitor was hindered or the trial could not be recorded: it is struck, kept, and taken again. */
export interface ReplacementEntry {
  readonly kind: 'replacement';
  readonly attempt: string;
  readonly reason: string;
}

/**
 * A decision on an open question: `count` a held entry or a protested trial, or `dismiss` it (the entry stays out of
 * the places; the failure stands). `reason` is the ground of the decision.
 */
export interface RulingEntry {
  readonly kind: 'ruling';
  readonly entry: string;
  readonly decision: 'count' | 'dismiss';
  readonly reason: string;
}

/** Who did not start, or did after all. */
export interface StartEntry {
  readonly kind: 'start';
  readonly competitor: string;
  readonly status: 'DNS' | 'started';
}

export interface DisqualificationEntry {
  readonly kind: 'disqualification';
  readonly competitor: string;
  /** The rule broken, as the referee names it. */
  readonly rule: string;
  readonly reason: string;
}

export interface ReinstatementEntry {
  readonly kind: 'reinstatement';
  readonly competitor: string;
  readonly reason: string;
}

/** Let through a cut (or to the final, `after` null) by referee, jury or draw. */
export interface AdmissionEntry {
  readonly kind: 'admission';
  readonly competitor: string;
  readonly after: number | null;
  readonly admittedBy: AdmittedBy;
  readonly reason: string;
}

/** Called in this order in one round (a clash with another event, a drawn order). Those not named follow in theirs. */
export interface OrderEntry {
  readonly kind: 'order';
  readonly round: number;
  readonly competitors: readonly string[];
  readonly reason: string;
}

/** The result is official. `incomplete` says why, when trials are outstanding (darkness, weather). */
export interface SignOffEntry {
  readonly kind: 'sign-off';
  readonly incomplete: string | null;
}

/** The official result is open again. */
export interface ReopeningEntry {
  readonly kind: 'reopening';
  readonly reason: string;
}
