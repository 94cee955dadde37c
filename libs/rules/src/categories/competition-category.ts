import type { RuleSetCode } from '../codes.js';
import type { AgeBand, CategoryDefinition } from './category-definition.js';
import { categoryDefinitions } from './category-of.js';

/** Who a competition is for, as it says it. */
export interface CompetitionCategory {
  readonly rules: RuleSetCode;
  /** By which scheme the age category is meant; `null`: by one of the rule set. */
  readonly scheme: string | null;
  readonly sex: 'M' | 'W' | 'X' | null;
  /** As it was written: `U18`, `45`, `M45`, `45+`; `null`: for everybody. */
  readonly age: string | null;
  /** The day of the competition, `YYYY-MM-DD`. */
  readonly onDate: string;
}

/** The ages of a competition, found in the definitions. */
export interface FoundCategory {
  readonly definition: CategoryDefinition;
  readonly band: AgeBand;
  /** Several categories together, such as `45+`: everybody is of his own. */
  readonly isOpenEnded: boolean;
}

const WRITTEN_AGE = /^[MW]?(\d{2,3})(\+?)$/;

/**
 * What the age category of a competition means; `null`: it has none, or no definition in force on the day knows it.
 * `45+` is everybody from the lower limit of category 45 on.
 */
export function foundCategory(
  category: CompetitionCategory,
  own: readonly CategoryDefinition[] = [],
): FoundCategory | null {
  const { age } = category;
  if (age === null) return null;
  const [, number, plus] = WRITTEN_AGE.exec(age) ?? [];
  const codes = [age, ...(number === undefined ? [] : [number])];
  for (const definition of definitionsOf(category, own)) {
    const band = definition.bands.find(({ code }) => codes.includes(code));
    if (!band) continue;
    const isOpenEnded = plus === '+' && band.code !== age;
    return { definition, band: isOpenEnded ? { ...band, code: age, maxAge: null } : band, isOpenEnded };
  }
  return null;
}

/** The definitions by which a competition's categories are meant on its day, the organisation's own ones first. */
export function definitionsOf(
  { rules, scheme, onDate }: Pick<CompetitionCategory, 'rules' | 'scheme' | 'onDate'>,
  own: readonly CategoryDefinition[] = [],
): readonly CategoryDefinition[] {
  return categoryDefinitions(scheme === null ? { rules } : { scheme }, onDate, own);
}
