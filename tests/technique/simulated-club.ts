import type { AssessedSeries, AssessedTrial, Chance } from '#technique';

/** A club that is known to the last number, to see what the statistics make of it. */
export interface ClubPlan {
  /** True effect of the fault on log marks: −0.03 is three per cent shorter. */
  readonly effect: number;
  readonly athletes: number;
  readonly competitions: number;
  readonly trials: number;
}

export const PLAN: ClubPlan = { effect: 0, athletes: 12, competitions: 5, trials: 6 };

const BETWEEN_ATHLETES = 0.2;
const BETWEEN_DAYS = 0.02;
const BETWEEN_THROWS = 0.035;
const FOULS = 0.2;

/** What the observer wrote down of a throw that had the fault or not. */
export type Noting = (present: boolean, belowMedian: boolean, chance: Chance) => boolean;

const AS_IT_WAS: Noting = (present) => present;

/**
 * Invented: the weaker an athlete, the more often the fault; marks are normal on a log scale around athlete and day.
 */
export function simulatedClub(
  plan: ClubPlan,
  chance: Chance,
  noted: Noting = AS_IT_WAS,
): readonly (AssessedSeries & { readonly athlete: number })[] {
  return Array.from({ length: plan.athletes }, (_, athlete) => {
    const strength = chance.normal();
    const rate = 1 / (1 + Math.exp(1.5 * strength));
    return Array.from({ length: plan.competitions }, (__, competition) => {
      const level = Math.log(3500) + BETWEEN_ATHLETES * strength + BETWEEN_DAYS * chance.normal();
      const throws = Array.from({ length: plan.trials }, () => {
        const present = chance.uniform() < rate;
        const log = level + (present ? plan.effect : 0) + BETWEEN_THROWS * chance.normal();
        return { present, log, foul: chance.uniform() < FOULS };
      });
      const middle =
        [...throws].map(({ log }) => log).sort((a, b) => a - b)[Math.floor(plan.trials / 2)] ?? 0;
      const trials = throws.map(
        ({ present, log, foul }, at): AssessedTrial => ({
          round: at + 1,
          markCm: foul ? null : Math.round(Math.exp(log)),
          severity: noted(present, log < middle, chance) ? 2 : 0,
        }),
      );
      return {
        id: `${athlete}-${competition}`,
        athlete,
        day: 14 * competition,
        implement: 'discus-1000',
        trials,
      };
    });
  }).flat();
}
