import type { AgeFactorTable } from './age-graded.js';
import { ageOn, parseDate } from './calendar-date.js';
import type { CategoryDefinition } from './category-definition.js';
import { categoryDefinitions, categoryOf } from './category-of.js';
import { definitionsOf, foundCategory, type CompetitionCategory } from './competition-category.js';
import type { Entrant } from './eligibility.js';

/** Whose factor of a table is somebody's: the line is `sex` and `age`. */
export interface GradedAge {
  readonly sex: 'M' | 'W';
  readonly age: string;
}

/**
 * Whether a table has a factor for each year of age and not only for the categories of five years. Whoever sees a mark
 * beside its graded one then knows the age to the year.
 */
export function isByYears({ factors }: AgeFactorTable): boolean {
  return factors.some(({ age }) => /^\d+$/.test(age) && Number(age) % 5 !== 0);
}

/**
 * The line of a table that somebody's mark is graded by: by the age on the day where the table goes by years, else by
 * the first of his categories that the table has, those of the competition before the five-year ones of veterans.
 * `null`: none, or the age is not known.
 */
export function gradedAge(
  { birthDate, sex }: Pick<Entrant, 'birthDate' | 'sex'>,
  category: CompetitionCategory,
  table: AgeFactorTable,
  own: readonly CategoryDefinition[] = [],
): GradedAge | null {
  const decided = [sex, category.sex].find((one) => one === 'M' || one === 'W');
  if (decided !== 'M' && decided !== 'W') return null;
  const known = new Set(table.factors.filter((one) => one.sex === decided).map(({ age }) => age));
  const age = agesOf(birthDate, category, isByYears(table), own).find((one) => known.has(one));
  return age === undefined ? null : { sex: decided, age };
}

function agesOf(
  birthDate: string | null,
  category: CompetitionCategory,
  byYears: boolean,
  own: readonly CategoryDefinition[],
): string[] {
  const { onDate } = category;
  if (birthDate === null) {
    const found = foundCategory(category, own);
    return found && !found.isOpenEnded && !byYears ? [found.band.code] : [];
  }
  if (byYears) {
    const [birth, on] = [parseDate(birthDate), parseDate(onDate)];
    return birth && on ? [String(ageOn(birth, on))] : [];
  }
  const definitions = [...definitionsOf(category, own), ...categoryDefinitions({ rules: 'WMA' }, onDate)];
  return definitions.flatMap((definition) => {
    const outcome = categoryOf(birthDate, onDate, definition);
    return outcome.ok ? [outcome.category.code] : [];
  });
}
