import { eventOf, type EventCode } from '#rules';

/** A mark that was made elsewhere, as it is told. */
export interface ToldMark {
  readonly event: EventCode;
  readonly wind: string | null;
  readonly indoor: boolean;
  readonly implementGrams: number | null;
  /** `YYYY-MM-DD` */
  readonly onDate: string;
}

export interface ToldMarkProblem {
  readonly code: string;
  readonly field: 'wind' | 'implementGrams' | 'onDate';
  readonly message: string;
  readonly remedy: string;
}

/** Everything in a told mark that cannot be right. `today`: `YYYY-MM-DD`. */
export function toldMarkProblems(
  { event, indoor, wind, implementGrams, onDate }: ToldMark,
  today: string,
): ToldMarkProblem[] {
  const { hasImplement, hasWind } = eventOf(event);
  const problems: ToldMarkProblem[] = [];
  if (hasImplement && implementGrams === null) problems.push(IMPLEMENT_MISSING);
  if (!hasImplement && implementGrams !== null) problems.push(IMPLEMENT_NOT_EXPECTED);
  if (hasWind(indoor) && wind === null) problems.push(WIND_MISSING);
  if (!hasWind(indoor) && wind !== null) problems.push(WIND_NOT_EXPECTED);
  if (onDate > today) problems.push(NOT_YET);
  return problems;
}

const IMPLEMENT_MISSING: ToldMarkProblem = {
  code: 'IMPLEMENT_MISSING',
  field: 'implementGrams',
  message: 'Marks of a throw compare only with the same implement.',
  remedy: 'Say how heavy it was, in grams.',
};

const IMPLEMENT_NOT_EXPECTED: ToldMarkProblem = {
  code: 'IMPLEMENT_NOT_EXPECTED',
  field: 'implementGrams',
  message: 'Nothing is thrown in this event.',
  remedy: 'Leave it out.',
};

const WIND_MISSING: ToldMarkProblem = {
  code: 'WIND_MISSING',
  field: 'wind',
  message: 'Outdoors a horizontal jump counts with its wind only.',
  remedy: 'Write the reading, or NWI if there was none: then the mark is shown and does not count.',
};

const WIND_NOT_EXPECTED: ToldMarkProblem = {
  code: 'WIND_NOT_EXPECTED',
  field: 'wind',
  message: 'No wind belongs to this mark.',
  remedy: 'Leave it out.',
};

const NOT_YET: ToldMarkProblem = {
  code: 'NOT_YET',
  field: 'onDate',
  message: 'The day lies ahead.',
  remedy: 'Write the day on which the mark was made.',
};
