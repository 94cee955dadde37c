import { parseDate } from './calendar-date.js';
import type { CategoryDefinition } from './category-definition.js';
import { categoryOf, sideOfBand, type AgeCategory } from './category-of.js';
import {
  definitionsOf,
  foundCategory,
  type CompetitionCategory,
  type FoundCategory,
} from './competition-category.js';

/** Who is to be entered, as far as it matters for categories. */
export interface Entrant {
  /** `YYYY-MM-DD`; `null`: not known. */
  readonly birthDate: string | null;
  readonly sex: 'M' | 'W' | 'X' | null;
  /** Competes out of the ranking: nobody's place is at stake. */
  readonly guest: boolean;
}

export const CATEGORY_FINDINGS = [
  'AGE_UNKNOWN',
  'CATEGORY_UNKNOWN',
  'OTHER_AGES',
  'TOO_OLD',
  'TOO_YOUNG',
  'OTHER_SEX',
  'SEX_UNDECIDED',
] as const;

/** What the categories say against an entry. A notice is for somebody to look at; the others keep the entry out. */
export interface CategoryFinding {
  readonly code: (typeof CATEGORY_FINDINGS)[number];
  readonly isNotice: boolean;
  readonly field: 'athleteId' | 'competitionId';
  readonly message: string;
  readonly rule: string;
  readonly remedy: string;
}

export interface Eligibility {
  readonly findings: readonly CategoryFinding[];
  /** The entrant's own category on the day; `null`: not known, or none. */
  readonly own: AgeCategory | null;
  /** What the competition's category means; `null`: it has none, or nobody knows it. */
  readonly competition: FoundCategory | null;
}

/** From this age on a lower limit says who is a veteran, not who is grown up. */
const FIRST_VETERAN_AGE = 30;

const UP_ONLY = 'entering a harder category is common practice, an easier one is not; no published source';

/**
 * Whether somebody may be entered in a competition of a category. Into a harder one he may be: the younger among the
 * older up to the open ages, the older among the younger of the veterans; that is a notice, because the regulations of
 * the meet may say otherwise. Into an easier one never, but as a guest. Common practice, no published source; the
 * limits themselves are those of the definition.
 */
export function eligibilityOf(
  entrant: Entrant,
  category: CompetitionCategory,
  ownDefinitions: readonly CategoryDefinition[] = [],
): Eligibility {
  const competition = foundCategory(category, ownDefinitions);
  const findings = [
    ...sexFindings(entrant, category),
    ...(category.age === null ? [] : ageFindings(entrant, category, competition)),
  ];
  return {
    findings: entrant.guest ? findings.map((one) => ({ ...one, isNotice: true })) : findings,
    own: ownCategory(entrant, category, competition, ownDefinitions),
    competition,
  };
}

/** By the definition of the competition's own category, else by the first that has one for the entrant. */
function ownCategory(
  { birthDate }: Entrant,
  category: CompetitionCategory,
  competition: FoundCategory | null,
  ownDefinitions: readonly CategoryDefinition[],
): AgeCategory | null {
  if (birthDate === null) return null;
  const definitions = competition ? [competition.definition] : definitionsOf(category, ownDefinitions);
  for (const definition of definitions) {
    const outcome = categoryOf(birthDate, category.onDate, definition);
    if (outcome.ok) return outcome.category;
  }
  return null;
}

function sexFindings({ sex }: Entrant, category: CompetitionCategory): CategoryFinding[] {
  const wanted = category.sex;
  if ((wanted !== 'M' && wanted !== 'W') || sex === null || sex === wanted) return [];
  const who = wanted === 'W' ? 'women' : 'men';
  const remedy =
    'Enter the athlete in a competition of the own category, which can be called together with this one.';
  return [
    {
      code: sex === 'X' ? 'SEX_UNDECIDED' : 'OTHER_SEX',
      isNotice: sex === 'X',
      field: 'athleteId',
      message: `The competition is for ${who}.`,
      rule: 'WA TR3 (from memory)',
      remedy: sex === 'X' ? 'The referee decides by the regulations of the meet.' : remedy,
    },
  ];
}

function ageFindings(
  { birthDate }: Entrant,
  { age, onDate }: CompetitionCategory,
  found: FoundCategory | null,
): CategoryFinding[] {
  if (!found) {
    const message = `No definition in force on ${onDate} knows the category "${age}", so nobody's age was checked.`;
    const remedy = 'Name the scheme of the category with the competition, or lay the category down.';
    return [finding('CATEGORY_UNKNOWN', true, message, 'common practice, no published source', remedy)];
  }
  const { band, definition } = found;
  if (band.minAge === null && band.maxAge === null) return [];
  const [birth, on] = [birthDate === null ? null : parseDate(birthDate), parseDate(onDate)];
  if (!birth || !on) {
    const message = `The date of birth is not known, so the category "${age}" was not checked.`;
    return [
      finding('AGE_UNKNOWN', true, message, definition.cite.rule, 'Look at it before the competition.'),
    ];
  }
  const side = sideOfBand(band, birth, on, definition.ageOn);
  if (side === 'within') return [];
  const isVeterans = (band.minAge ?? 0) >= FIRST_VETERAN_AGE;
  if ((side === 'below') !== isVeterans) {
    const message = `The athlete is ${side === 'below' ? 'younger' : 'older'} than the category "${age}" and competes in a harder one.`;
    const remedy = 'Look whether the regulations of the meet allow it.';
    return [finding('OTHER_AGES', true, message, UP_ONLY, remedy)];
  }
  const message = `The athlete is too ${side === 'below' ? 'young' : 'old'} for the category "${age}".`;
  const remedy = 'Enter the athlete in the own category or a harder one, or here as a guest.';
  const rule = `${definition.cite.rule}; ${UP_ONLY}`;
  return [finding(side === 'below' ? 'TOO_YOUNG' : 'TOO_OLD', false, message, rule, remedy)];
}

function finding(
  code: CategoryFinding['code'],
  isNotice: boolean,
  message: string,
  rule: string,
  remedy: string,
): CategoryFinding {
  const field = code === 'CATEGORY_UNKNOWN' ? 'competitionId' : 'athleteId';
  return { code, isNotice, field, message, rule, remedy };
}
