import type { FoulCode } from '../fouls.js';
import type { NamedImplement } from '../implements/standing.js';
import type { EntryHead, SharedBody } from '../journal/entry.js';
import type { Wind } from '../quantities/wind.js';

/**
 * One entry of the journal of a throw or a horizontal jump: what somebody did or decided.
 */
export type Entry = EntryHead & EntryBody;

export type EntryBody =
  | SharedBody
  | AttemptEntry
  | WindEntry
  | CorrectionEntry
  | MoveEntry
  | OrderEntry
  | ImplementQueryEntry;

export type EntryKind = EntryBody['kind'];

/** What was seen at the circle. `mark` in whole units of the competition, exactly for `valid`. */
export interface Judgement extends NamedImplement {
  readonly outcome: 'valid' | 'unmeasured' | 'foul' | 'pass' | 'retired';
  readonly mark: number | null;
  /** `null`: none given (outdoors in a horizontal jump the same as `pending`). */
  readonly wind: Wind | null;
  readonly foul: FoulCode | null;
  /** A failure protested on the spot and measured all the same: held until ruled. Only with `foul`. */
  readonly protested: number | null;
  /** Mass of the implement used, if it was noted; of one that is named, as registered. */
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

/** Called in this order in one round (a clash with another event, a drawn order). Those not named follow in theirs. */
export interface OrderEntry {
  readonly kind: 'order';
  readonly round: number;
  readonly competitors: readonly string[];
  readonly reason: string;
}

/**
 * The implement of these trials did not pass when it was looked at again: each is a question to the referee. They
 * count as before until the referee rules; one that is dismissed was a failure.
 */
export interface ImplementQueryEntry {
  readonly kind: 'implement-query';
  readonly attempts: readonly string[];
  readonly implementId: string;
  readonly reason: string;
}
