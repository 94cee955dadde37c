import type { CombinedTableCode } from './combined-tables.js';
import type { Timing } from './combined-mark.js';

/** The marks of a combined events competition. */
export interface CombinedCard {
  readonly table: CombinedTableCode;
  readonly timing: Timing;
  /** In the original order. */
  readonly rows: readonly CombinedCompetitor[];
}

export interface CombinedCompetitor {
  readonly bib: string;
  readonly name: string | null;
  /** `null`: without a club. */
  readonly club: string | null;
  /** Aligned with the events of the table. */
  readonly marks: readonly CombinedMark[];
}

/** Whole hundredths (of a second, of a metre); `null`: no valid mark or no finish; `DNS`: did not start the event. */
export type CombinedMark = number | null | 'DNS';
