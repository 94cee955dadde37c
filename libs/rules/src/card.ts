import type { AdmittedBy, DistanceEventCode, RuleSetCode, Stage } from './codes.js';
import type { Plan } from './plan.js';
import type { Unit } from './quantities/mark.js';
import type { Series } from './trial.js';

/**
 * All that decides a throws or horizontal-jumps competition, and nothing else: the one input of ranking, cuts,
 * orders and the result document. A sheet is read into a card; a journal folds into a card.
 */
export interface Card {
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly event: DistanceEventCode;
  readonly indoor: boolean;
  readonly stage: Stage;
  /** Standard in units of the card; only in a qualification. */
  readonly qualifying: { readonly standard: number; readonly fill: number } | null;
  readonly plan: Plan;
  readonly unit: Unit;
  /** In the order of competition. */
  readonly competitors: readonly CardCompetitor[];
  readonly admitted: readonly Admission[];
}

export interface CardCompetitor {
  /** Unique within the card. */
  readonly bib: string;
  readonly name: string | null;
  /** `null`: without a club. */
  readonly club: string | null;
  readonly flight: string | null;
  readonly status: 'DNS' | 'DQ' | null;
  readonly guest: boolean;
  readonly series: Series;
}

export interface Admission {
  readonly bib: string;
  /** The round of the cut; `null` in a qualification (to the final). */
  readonly after: number | null;
  readonly by: AdmittedBy;
}
