import type { DistanceEventCode, RuleSetCode, Stage } from '../codes.js';
import type { Plan } from '../plan.js';
import type { Unit } from '../quantities/mark.js';

/** What is settled before the first trial: the rules, the plan and the start list. */
export interface CompetitionSetup {
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly event: DistanceEventCode;
  readonly indoor: boolean;
  readonly stage: Stage;
  /** Standard in units of the competition; only in a qualification. */
  readonly qualifying: { readonly standard: number; readonly fill: number } | null;
  readonly plan: Plan;
  readonly unit: Unit;
  /** Part of a combined event; absent: by itself. */
  readonly combined?: boolean;
  /** In the order of competition. */
  readonly competitors: readonly SetupCompetitor[];
}

export interface SetupCompetitor {
  /** How entries name the competitor; never changes. */
  readonly key: string;
  readonly bib: string;
  readonly name: string | null;
  readonly club: string | null;
  readonly flight: string | null;
  /** Competes out of the ranking. */
  readonly guest: boolean;
  /** Mass of the implement of the competitor's category; `null`: not watched. */
  readonly implementGrams: number | null;
  /** Entered at the circle, and nobody has said yet who it is; absent: no. */
  readonly unmatched?: boolean;
}
