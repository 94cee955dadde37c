import type { Authority, EntryHead, RulingDecision } from '../../journal/entry.js';
import type { Timing } from '../combined-mark.js';
import type { CombinedEventCode } from '../scoring-table.js';

/**
 * An entry in the journal of a combined event. Nothing in it is changed or removed; what replaces an earlier entry
 * names it. `entrant` is the entrant's key in the combined event.
 */
export type CombinedEntry = EntryHead & CombinedBody;
export type CombinedEntryKind = CombinedBody['kind'];
export type { Authority };

export type CombinedBody =
  | CombinedResultBody
  | CombinedCorrectionBody
  | CombinedReversalBody
  | CombinedRulingBody
  | CombinedStartBody
  | CombinedSignOffBody
  | CombinedReopeningBody;

/** What somebody did in one event: a time, a mark, or why there is none. */
export interface CombinedPerformance {
  readonly outcome: CombinedOutcome;
  /** Exactly with `valid`: whole hundredths of a second, or of a metre. */
  readonly hundredths: number | null;
  /** Of a time: how it was taken. `null` in field events and without a time. */
  readonly timing: Timing | null;
  /** Tenths of m/s; `null`: none is measured, or the reading is to come. */
  readonly wind: number | 'NWI' | null;
}

/** `DNF` belongs to races, `NM` to field events: no valid mark. All but `valid` are worth nothing. */
export const COMBINED_OUTCOMES = ['valid', 'NM', 'DNS', 'DNF', 'DQ'] as const;
export type CombinedOutcome = (typeof COMBINED_OUTCOMES)[number];

/** The result of one entrant in one event that no competition of the meet counts. */
export interface CombinedResultBody extends CombinedPerformance {
  readonly kind: 'result';
  readonly entrant: string;
  readonly event: CombinedEventCode;
}

/** What a result really was; a wind that is left out stays as it was. */
export interface CombinedCorrectionBody extends CombinedPerformance {
  readonly kind: 'correction';
  readonly entry: string;
  readonly reason: string;
}

/** The named entry should never have been made. */
export interface CombinedReversalBody {
  readonly kind: 'reversal';
  readonly entry: string;
  readonly reason: string;
}

/** The referee's decision on a held entry. */
export interface CombinedRulingBody {
  readonly kind: 'ruling';
  readonly entry: string;
  readonly decision: RulingDecision;
  readonly reason: string;
}

/**
 * Who does not start at all, gives up, or is in it after all. `from`: the first event that somebody who gave up does
 * not start; `null` otherwise.
 */
export interface CombinedStartBody {
  readonly kind: 'start';
  readonly entrant: string;
  readonly status: 'started' | 'DNS' | 'DNF';
  readonly from: CombinedEventCode | null;
}

/** The result is official. `incomplete` says why, when results are outstanding. */
export interface CombinedSignOffBody {
  readonly kind: 'sign-off';
  readonly incomplete: string | null;
}

export interface CombinedReopeningBody {
  readonly kind: 'reopening';
  readonly reason: string;
}
