import type { StartingMarkRow } from '#persistence';
import { eventOf } from '#rules';

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
  const { event, indoor, wind, implementGrams, onDate } = values;
  const { hasImplement, hasWind } = eventOf(event);
  const problems: StartingProblem[] = [];
  if (values.clubId === null && values.meetId === null && values.athleteId === null)
    problems.push(IN_NO_LIST);
  if (hasImplement && implementGrams === null) problems.push(IMPLEMENT_MISSING);
  if (!hasImplement && implementGrams !== null) problems.push(IMPLEMENT_NOT_EXPECTED);
  if (hasWind(indoor) && wind === null) problems.push(WIND_MISSING);
  if (!hasWind(indoor) && wind !== null) problems.push(WIND_NOT_EXPECTED);
  if (onDate > today) problems.push(NOT_YET);
  return problems;
}

const IN_NO_LIST: StartingProblem = {
  code: 'IN_NO_LIST',
  field: 'clubId',
  message: 'Nothing says in whose lists the mark stands.',
  remedy: 'Name a club, a meet or an athlete.',
};

const IMPLEMENT_MISSING: StartingProblem = {
  code: 'IMPLEMENT_MISSING',
  field: 'implementGrams',
  message: 'Marks of a throw compare only with the same implement.',
  remedy: 'Say how heavy it was, in grams.',
};

const IMPLEMENT_NOT_EXPECTED: StartingProblem = {
  code: 'IMPLEMENT_NOT_EXPECTED',
  field: 'implementGrams',
  message: 'Nothing is thrown in this event.',
  remedy: 'Leave it out.',
};

const WIND_MISSING: StartingProblem = {
  code: 'WIND_MISSING',
  field: 'wind',
  message: 'Outdoors a horizontal jump counts with its wind only.',
  remedy: 'Write the reading, or NWI if there was none: then the mark is shown and does not count.',
};

const WIND_NOT_EXPECTED: StartingProblem = {
  code: 'WIND_NOT_EXPECTED',
  field: 'wind',
  message: 'No wind belongs to this mark.',
  remedy: 'Leave it out.',
};

const NOT_YET: StartingProblem = {
  code: 'NOT_YET',
  field: 'onDate',
  message: 'The day lies ahead.',
  remedy: 'Write the day on which the mark was made.',
};

/** The same for equal marks of one holder: it is there already. */
export function identityOf({ place: _, ...deciding }: StartingValues): string {
  const { clubId, meetId, athleteId, event, unit, mark, wind, indoor, implementGrams, sex, age, onDate } =
    deciding;
  return JSON.stringify([
    ...[clubId, meetId, athleteId, event, unit, mark, wind, indoor, implementGrams, sex, age, onDate],
  ]);
}
