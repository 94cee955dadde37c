import type { Admission } from '../card.js';
import type { RuleSetCode, Stage, VerticalEventCode } from '../codes.js';
import type { Unit } from '../quantities/mark.js';

/** How one trial at a height ended. `retired` ends the series. */
export type VerticalTrial = 'cleared' | 'failed' | 'passed' | 'retired';

/** The trials taken at one height, in order: at most three, and nothing after `cleared`, `passed` or `retired`. */
export type HeightTrials = readonly VerticalTrial[];

/** A competitor's trials, aligned with the card's heights; `null`, or nothing at the end = none taken there. */
export type VerticalSeries = readonly (HeightTrials | null)[];

/**
 * All that decides a high jump or pole vault competition: the one input of its ranking, jump-off and result rows.
 * Heights in whole units of the card.
 */
export interface VerticalCard {
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly event: VerticalEventCode;
  readonly indoor: boolean;
  readonly stage: Stage;
  /** Standard in units of the card; only in a qualification. */
  readonly qualifying: { readonly standard: number; readonly fill: number } | null;
  readonly unit: Unit;
  /** Strictly rising, not empty. */
  readonly heights: readonly number[];
  /** In the order of competition. */
  readonly competitors: readonly VerticalCompetitor[];
  /** Only in a qualification: let through to the final by referee, jury or draw. */
  readonly admitted: readonly Admission[];
  /** In the order taken; only in a final. */
  readonly jumpOff: readonly JumpOffRound[];
}

export interface VerticalCompetitor {
  /** Unique within the card. */
  readonly bib: string;
  readonly name: string | null;
  /** `null`: without a club. */
  readonly club: string | null;
  readonly flight: string | null;
  readonly status: 'DNS' | 'DQ' | null;
  readonly guest: boolean;
  readonly series: VerticalSeries;
}

/** One round of the jump-off for first place: one trial for each who is still in it. */
export interface JumpOffRound {
  /** In whole units of the card. */
  readonly height: number;
  readonly tries: readonly JumpOffTry[];
}

export interface JumpOffTry {
  readonly bib: string;
  readonly trial: VerticalTrial;
}
