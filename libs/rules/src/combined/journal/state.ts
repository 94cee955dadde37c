import type { RuleSetCode } from '../../codes.js';
import type { RulingDecision } from '../../journal/entry.js';
import type { CombinedTies } from '../combined-ranking.js';
import type { CombinedTable } from '../combined-tables.js';
import type { CombinedEventCode } from '../scoring-table.js';
import type { CombinedEntry, CombinedPerformance } from './entry.js';
import type { CombinedHoldCode } from './verdict.js';

/** What decides of a combined event beside its journal. */
export interface CombinedSetup {
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly table: CombinedTable;
  /** What becomes of equal totals. */
  readonly ties: CombinedTies;
  /** In the original order. */
  readonly entrants: readonly CombinedEntrant[];
  /** Events counted from a competition of the meet, with what it comes to now. */
  readonly linked: ReadonlyMap<CombinedEventCode, LinkedComponent>;
}

export interface CombinedEntrant {
  readonly key: string;
  readonly bib: string;
  readonly guest: boolean;
}

/** A competition of the meet as the combined event looks at it. */
export interface LinkedComponent {
  /** Its result is signed off: nothing in it moves any more. */
  readonly isOfficial: boolean;
  /** By entrant. Absent: nothing so far, or not in that competition. */
  readonly results: ReadonlyMap<string, CombinedPerformance>;
}

/** An entry as the journal keeps it: with what was decided when it came in. */
export interface CombinedItem {
  readonly entry: CombinedEntry;
  /** Why it was held when it came in; `null`: accepted. */
  readonly hold: CombinedHoldCode | null;
}

/** `displaced`: another result of the same event was ruled to count; `dismissed`: ruled not to count. */
export type CombinedStandingOf = 'counts' | 'displaced' | 'dismissed' | CombinedHoldCode;

/** An entered result as it is after corrections, and where it stands. */
export interface EnteredResult {
  readonly id: string;
  readonly entrant: string;
  readonly event: CombinedEventCode;
  readonly performance: CombinedPerformance;
  readonly standing: CombinedStandingOf;
}

/** What counts for an entrant in an event. */
export interface ComponentResult extends CombinedPerformance {
  /** The entry; `null`: counted from a linked competition. */
  readonly entry: string | null;
}

/** An entrant who is out of the event: not started, or given up from an event (its index) on. */
export interface OutOfEvent {
  readonly status: 'DNS' | 'DNF';
  readonly from: number;
}

/** Something a referee has to decide. */
export interface CombinedQuestion {
  readonly entry: string;
  readonly hold: CombinedHoldCode;
}

/** What the journal and the linked competitions come to. */
export interface CombinedEventState {
  readonly setup: CombinedSetup;
  readonly journal: readonly CombinedItem[];
  /** Every entered result that was not taken back, by entry. */
  readonly entered: ReadonlyMap<string, EnteredResult>;
  /** By entrant, aligned with the programme: what counts; `null`: nothing so far. */
  readonly results: ReadonlyMap<string, readonly (ComponentResult | null)[]>;
  /** Entrants who are out, as was said of them or as an event that they did not start says. */
  readonly out: ReadonlyMap<string, OutOfEvent>;
  /** Of these: who was entered as not starting or giving up. */
  readonly declared: ReadonlyMap<string, OutOfEvent>;
  readonly questions: readonly CombinedQuestion[];
  readonly reversed: ReadonlySet<string>;
  readonly rulings: ReadonlyMap<string, RulingDecision>;
  readonly signedOff: boolean;
}
