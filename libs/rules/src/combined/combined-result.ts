import type { Problem } from '../result/result-document.js';

/** `sectorline-result/1` of a combined events competition. */
export interface CombinedResultDocument {
  readonly format: 'sectorline-result/1';
  readonly results?: readonly CombinedRow[];
  readonly problems: readonly Problem[];
}

export interface CombinedRow {
  readonly bib: string;
  readonly place: number | null;
  /** The place is shared. */
  readonly equal: boolean;
  /** `DNF`: did not start an event, and so has no place. */
  readonly status: 'DNF' | null;
  /** The total; of who did not finish, the points so far. */
  readonly points: number;
  /** By event, in the order of the table; 0 where there is no mark. */
  readonly eventPoints: Readonly<Record<string, number>>;
}
