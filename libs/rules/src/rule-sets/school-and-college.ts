import type { Plan } from '../plan.js';

/** The final of US school and college meets: nine go on, and a tie on the best mark is not broken for it. */
export const NINE_GO_ON: Plan = {
  rounds: 6,
  cuts: [{ after: 3, through: 9 }],
  cutTies: 'mark',
  reorderAfter: [3],
  reorder: 'reverse',
};

/** Why two consecutive throws or horizontal jumps get no more than the ordinary time. */
export const NO_LONGER_TIME_SEEN = 'No longer time for consecutive throws or horizontal jumps was seen.';
