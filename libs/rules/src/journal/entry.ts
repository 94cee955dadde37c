import type { AdmittedBy } from '../codes.js';
import type { CircleBody } from './circle-entry.js';
import type { ListBody } from './list-entry.js';
import type { SafetyCheckCode } from '../safety/checklist.js';
import type { InterruptionCause } from '../safety/interruption.js';

/**
 * What an entry of any journal has. An entry says what somebody did or decided. Nothing in a journal is changed or
 * removed; what replaces an earlier entry names it. `competitor` is the competitor's key in the competition (not the
 * bib, which may be swapped). Ids are made by the device that makes the entry.
 */
export interface EntryHead {
  readonly id: string;
  /** With which right it was made; decides whether a correction counts at once or waits for the referee. */
  readonly by: Authority;
  /** Who made it, as an opaque name: an official may take back only what he entered himself. */
  readonly actor: string;
}

/** official: at the circle or the bar; referee and director: may decide. */
export type Authority = 'official' | 'referee' | 'director';

/** What is entered alike whatever the event is. */
export type SharedBody =
  | ReversalEntry
  | ReplacementEntry
  | RulingEntry
  | StartEntry
  | DisqualificationEntry
  | ReinstatementEntry
  | AdmissionEntry
  | InterruptionEntry
  | AllClearEntry
  | SignOffEntry
  | ReopeningEntry
  | CircleBody
  | ListBody;

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
  readonly decision: RulingDecision;
  readonly reason: string;
}

export type RulingDecision = 'count' | 'dismiss';

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

/** Nobody is called any more. Said again, with a new flash or another cause, it goes on. */
export interface InterruptionEntry {
  readonly kind: 'interruption';
  readonly cause: InterruptionCause;
  readonly note: string | null;
  /** When it was seen: milliseconds since the epoch. */
  readonly seenAt: number;
}

/** The responsible official has gone through the checklist of the event: it may begin, or go on. */
export interface AllClearEntry {
  readonly kind: 'all-clear';
  readonly confirmed: readonly SafetyCheckCode[];
  /** A new warm-up is given, as after a long stop. */
  readonly newWarmUp: boolean;
  /** When it was said: milliseconds since the epoch. */
  readonly clearedAt: number;
  /** The referee's ground for not waiting as long as usual after lightning. */
  readonly despite: string | null;
}

/** The result is official. `incomplete` says why, when trials are outstanding (darkness, weather). */
export interface SignOffEntry {
  readonly kind: 'sign-off';
  readonly incomplete: string | null;
  /** The referee's ground for not waiting until protests are decided and their time is over; absent: waited. */
  readonly despite?: string | null;
}

/** The official result is open again. */
export interface ReopeningEntry {
  readonly kind: 'reopening';
  readonly reason: string;
}
