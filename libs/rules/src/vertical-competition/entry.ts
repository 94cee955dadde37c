import type { FoulCode } from '../fouls.js';
import type { EntryHead, SharedBody } from '../journal/entry.js';
import type { VerticalTrial } from '../vertical/vertical-card.js';
import type { IncidentCode } from './incidents.js';

/** One entry of the journal of a high jump or pole vault: what somebody did or decided. */
export type VerticalEntry = EntryHead & VerticalBody;

export type VerticalBody =
  | SharedBody
  | JumpEntry
  | JumpOffEntry
  | JumpCorrectionEntry
  | JumpMoveEntry
  | BarEntry
  | UprightsEntry
  | JumpOffDeclinedEntry
  | JumpOrderEntry;

export type VerticalEntryKind = VerticalBody['kind'];

/** What was seen at the bar. */
export interface JumpJudgement {
  readonly outcome: VerticalTrial;
  /** Why it was a failure; only with `failed`, and always optional. */
  readonly foul: FoulCode | null;
  /** Something out of the ordinary that decided how the trial was judged. */
  readonly incident: IncidentCode | null;
  /** A failure protested on the spot: a clearance if the protest is upheld. Only with `failed`. */
  readonly protested: boolean;
}

/** Which trial it was, as the device believed: heights in whole units of the competition. */
export interface JumpTurn {
  readonly height: number;
  /** The competitor's first, second or third trial at the height; in the jump-off: its round. From 1. */
  readonly trial: number;
}

/** A trial, a pass or the retirement at a height. A pass may be told before the bar is there. */
export interface JumpEntry extends JumpJudgement, JumpTurn {
  readonly kind: 'jump';
  readonly competitor: string;
}

/** A trial of the jump-off for first place. Who passes or retires gives up the claim. */
export interface JumpOffEntry extends JumpJudgement, JumpTurn {
  readonly kind: 'jump-off';
  readonly competitor: string;
}

/** The trial was judged or written wrongly: this is what it was. */
export interface JumpCorrectionEntry extends JumpJudgement {
  readonly kind: 'jump-correction';
  readonly attempt: string;
  readonly reason: string;
}

/** Trials entered on a wrong line or in a wrong column: each named one belongs there. */
export interface JumpMoveEntry {
  readonly kind: 'jump-move';
  readonly moves: readonly (JumpTurn & { readonly attempt: string; readonly competitor: string })[];
  readonly reason: string;
}

/**
 * The bar is set at this height. Along the announced heights it rises without this entry as soon as all have taken
 * their trials.
 */
export interface BarEntry {
  readonly kind: 'bar';
  readonly height: number;
  /** Lower heights that are not jumped, since the winner chose or all agreed. */
  readonly leavesOut: readonly number[];
}

/** How a vaulter wants the uprights from now on: centimetres behind the zero line, towards the landing area. */
export interface UprightsEntry {
  readonly kind: 'uprights';
  readonly competitor: string;
  readonly behindZeroCm: number;
}

/** Those level for first, or still in the jump-off, do not jump (on): they share the place. */
export interface JumpOffDeclinedEntry {
  readonly kind: 'jump-off-declined';
  readonly reason: string;
}

/** Called in this order for one trial at one height (a clash with another event). Those not named follow in theirs. */
export interface JumpOrderEntry extends JumpTurn {
  readonly kind: 'jump-order';
  readonly competitors: readonly string[];
  readonly reason: string;
}
