import type { RuleSetCode, Stage, VerticalEventCode } from '../codes.js';
import type { SetupCompetitor } from '../competition/setup.js';
import type { Unit } from '../quantities/mark.js';

/** What is settled before the first jump: the rules, the announced heights and the start list. */
export interface VerticalSetup {
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly event: VerticalEventCode;
  readonly indoor: boolean;
  readonly stage: Stage;
  /** Standard in units of the competition; only in a qualification. */
  readonly qualifying: { readonly standard: number; readonly fill: number } | null;
  readonly unit: Unit;
  /** Announced before the start, in whole units: strictly rising, not empty. */
  readonly heights: readonly number[];
  /** Part of a combined event: the step is uniform, the times are its own, nobody chooses the height. */
  readonly combined: boolean;
  /**
   * What a pass gives up: every further trial at the height, or, where the regulations of children's and school meets
   * say so, this one trial only.
   */
  readonly passGivesUp: 'height' | 'trial';
  /** Whether a tie for first is jumped off, or left by the regulations of the meet. */
  readonly tieForFirst: 'jump-off' | 'shared';
  /** In the order of competition. */
  readonly competitors: readonly VerticalSetupCompetitor[];
}

export type VerticalSetupCompetitor = Omit<SetupCompetitor, 'implementGrams'>;
