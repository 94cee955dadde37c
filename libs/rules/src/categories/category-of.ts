import type { RuleSetCode } from '../codes.js';
import { ageOn, compareDates, formatDate, parseDate, type CalendarDate } from './calendar-date.js';
import type { AgeBand, AgeDay, CategoryDefinition } from './category-definition.js';
import { CATEGORY_DEFINITIONS } from './category-definitions.js';
import { isValidOn } from './validity.js';

export interface AgeCategory {
  readonly scheme: string;
  readonly code: string;
  /** Completed years on the day that counts; `null` where the age does not matter. */
  readonly age: number | null;
  /** That day, as `YYYY-MM-DD`. */
  readonly ageOn: string | null;
}

export type CategoryOutcome =
  | { readonly ok: true; readonly category: AgeCategory }
  | { readonly ok: false; readonly problem: CategoryProblem };

export interface CategoryProblem {
  readonly field: 'birthDate' | 'onDate' | 'definition';
  readonly code: 'DATE' | 'NOT_BORN' | 'NOT_IN_FORCE' | 'NO_CATEGORY';
  readonly message: string;
}

/**
 * The age category of a competitor on the day of a competition, by one definition. Days are `YYYY-MM-DD`. That
 * somebody may enter an older category as well is up to the regulations of the meet.
 */
export function categoryOf(
  birthDate: string,
  onDate: string,
  definition: CategoryDefinition,
): CategoryOutcome {
  const [birth, on] = [parseDate(birthDate), parseDate(onDate)];
  if (!birth) return noDate('birthDate', birthDate);
  if (!on) return noDate('onDate', onDate);
  if (compareDates(on, birth) < 0) {
    return problem(
      'birthDate',
      'NOT_BORN',
      `Nobody born on ${birthDate} competes on ${onDate}. Check both days.`,
    );
  }
  if (!isValidOn(definition.valid, onDate)) {
    return problem(
      'definition',
      'NOT_IN_FORCE',
      `The categories "${definition.scheme}" are not in force on ${onDate}.`,
    );
  }
  const day = dayThatCounts(definition.ageOn, on);
  const band = definition.bands.find((one) => sideOfBand(one, birth, on, definition.ageOn) === 'within');
  const age = day && ageOn(birth, day);
  if (!band) {
    const message = `"${definition.scheme}" has no category for age ${age}. Enter the competitor as a guest, or in another one.`;
    return problem('birthDate', 'NO_CATEGORY', message);
  }
  const category = { scheme: definition.scheme, code: band.code, age, ageOn: day && formatDate(day) };
  return { ok: true, category };
}

/** The definitions in force on a day: of a rule set, or of a scheme by name; a meet's own ones first. */
export function categoryDefinitions(
  of: { readonly rules: RuleSetCode } | { readonly scheme: string },
  onDate: string,
  own: readonly CategoryDefinition[] = [],
): readonly CategoryDefinition[] {
  return [...own, ...CATEGORY_DEFINITIONS].filter(
    (definition) =>
      isValidOn(definition.valid, onDate) &&
      ('rules' in of ? definition.rules === of.rules : definition.scheme === of.scheme),
  );
}

/** On which side of a category's ages somebody is on the day of a competition; where the age does not matter: within. */
export function sideOfBand(
  { minAge, maxAge, maxAgeOn }: AgeBand,
  birth: CalendarDate,
  on: CalendarDate,
  day: AgeDay,
): 'below' | 'within' | 'above' {
  const [counts, countsAbove] = [dayThatCounts(day, on), dayThatCounts(maxAgeOn ?? day, on)];
  if (!counts || !countsAbove) return 'within';
  if (minAge !== null && ageOn(birth, counts) < minAge) return 'below';
  return maxAge !== null && ageOn(birth, countsAbove) > maxAge ? 'above' : 'within';
}

function dayThatCounts(day: AgeDay, on: CalendarDate): CalendarDate | null {
  switch (day.kind) {
    case 'end of year':
      return { year: on.year, month: 12, day: 31 };
    case 'day of competition':
      return on;
    case 'next': {
      const thisYear = { year: on.year, month: day.month, day: day.day };
      return compareDates(thisYear, on) >= 0 ? thisYear : { ...thisYear, year: on.year + 1 };
    }
    case 'no age':
      return null;
  }
}

function noDate(field: CategoryProblem['field'], text: string): CategoryOutcome {
  return problem(field, 'DATE', `"${text}" is no day. Write it as YYYY-MM-DD, e.g. 2008-02-29.`);
}

function problem(
  field: CategoryProblem['field'],
  code: CategoryProblem['code'],
  message: string,
): CategoryOutcome {
  return { ok: false, problem: { field, code, message } };
}
