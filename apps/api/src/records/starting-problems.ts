import type { StartingMarkRow } from '#persistence';
import { toldMarkProblems } from '../platform/competition/told-mark.js';

/** What a starting mark says, wherever it comes from. */
export type StartingValues = Pick<
  StartingMarkRow,
  | 'clubId'
  | 'meetId'
  | 'athleteId'
  | 'event'
  | 'unit'
  | 'mark'
  | 'wind'
  | 'indoor'
  | 'implementGrams'
  | 'sex'
  | 'age'
  | 'onDate'
  | 'place'
>;

export interface StartingProblem {
  readonly code: string;
  readonly field: keyof StartingValues;
  readonly message: string;
  readonly remedy: string;
}

/** Everything in a starting mark that cannot be right. `today`: `YYYY-MM-DD`. */
export function startingProblems(values: StartingValues, today: string): StartingProblem[] {
  const { clubId, meetId, athleteId } = values;
  const isInNoList = clubId === null && meetId === null && athleteId === null;
  return [...(isInNoList ? [IN_NO_LIST] : []), ...toldMarkProblems(values, today)];
}

const IN_NO_LIST: StartingProblem = {
  code: 'IN_NO_LIST',
  field: 'clubId',
  message: 'Nothing says in whose lists the mark stands.',
  remedy: 'Name a club, a meet or an athlete.',
};

/** The same for equal marks of one holder: it is there already. */
export function identityOf({ place: _, ...deciding }: StartingValues): string {
  const { clubId, meetId, athleteId, event, unit, mark, wind, indoor, implementGrams, sex, age, onDate } =
    deciding;
  return JSON.stringify([
    ...[clubId, meetId, athleteId, event, unit, mark, wind, indoor, implementGrams, sex, age, onDate],
  ]);
}
