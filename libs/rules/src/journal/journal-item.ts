import type { Entry } from '../competition/entry.js';
import type { AnyEntry } from './any-entry.js';
import type { HoldCode } from './verdict.js';

/** An entry as a journal keeps it: with what was decided when it came in. */
export interface JournalItem<E extends AnyEntry = Entry> {
  readonly entry: E;
  /** Why it was held when it came in; `null`: accepted. */
  readonly hold: HoldCode | null;
}

/** Something a referee has to decide. */
export interface Question {
  /** The held entry, or the trial: one under protest, or one whose implement did not pass afterwards. */
  readonly entry: string;
  readonly about: 'held' | 'protest' | 'implement';
  readonly hold: HoldCode | null;
}

/** What the officials did with a trial that had been entered; `displaced`: another one was ruled to count. */
export type Fate = 'counts' | 'struck' | 'displaced' | 'dismissed';

/**
 * `counts`: in the series. `struck`: a replacement was granted. `displaced`: another trial of the same turn was ruled
 * to count. `dismissed`: ruled not to count. A hold code: outside the places until ruled, or until what is missing
 * comes in.
 */
export type Standing = Fate | HoldCode;
