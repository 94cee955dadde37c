/** `next-best`: a tie for the last place of a cut is broken by the next best marks; `mark`: all level on the best go on. */
export type CutTies = 'next-best' | 'mark';
/** Order after a new ranking: worst first, or best first. */
export type Reorder = 'reverse' | 'leaders-first';

export interface Cut {
  /** The round after which the field is reduced, 1-based. */
  readonly after: number;
  /** How many go on. */
  readonly through: number;
}

/** How many trials there are, who goes on and in which order. Fully resolved: nothing is left to a default. */
export interface Plan {
  readonly rounds: number;
  readonly cuts: readonly Cut[];
  readonly cutTies: CutTies;
  readonly reorderAfter: readonly number[];
  readonly reorder: Reorder;
}

/** The parts of a plan that a meet sets itself; an absent key takes the rule set's value. */
export type PlanOverrides = Partial<Plan>;
