import type { AthleteRow, CompetitionRow, MeetRow } from '#persistence';
import { eligibilityOf, entrantGrams, type CategoryDefinition, type CategoryFinding } from '#rules';
import { categoryOfCompetition } from '../platform/competition/category.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';

/** What the age categories say of an entry. */
export interface EntryCategory {
  /** Null: nothing keeps the entry out. */
  readonly refused: Refusal | null;
  readonly notices: readonly CategoryFinding[];
  /** Mass of the implement that the category throws; null: no table says, or the competition lays down one for all. */
  readonly grams: number | null;
}

/** Who is entered, as far as categories ask; who is only a name has neither age nor sex. */
export interface Entrant {
  readonly athlete: Pick<AthleteRow, 'birthDate' | 'sex'> | null;
  readonly isGuest: boolean;
}

/** Where the entry goes: the competition, its meet and the organisation's own definitions. */
export interface EntryPlace {
  readonly competition: CompetitionRow;
  readonly meet: MeetRow;
  readonly ownDefinitions: readonly CategoryDefinition[];
}

export function entryCategory(
  { competition, meet, ownDefinitions }: EntryPlace,
  { athlete, isGuest }: Entrant,
): EntryCategory {
  const [birthDate, sex] = [athlete?.birthDate ?? null, athlete?.sex ?? null];
  const category = categoryOfCompetition(competition, meet);
  const eligibility = eligibilityOf({ birthDate, sex, guest: isGuest }, category, ownDefinitions);
  const [worst] = eligibility.findings.filter(({ isNotice }) => !isNotice);
  return {
    refused: worst ? refusal({ ...worst, path: [worst.field] }) : null,
    notices: eligibility.findings.filter(({ isNotice }) => isNotice),
    grams:
      competition.implementGrams === null
        ? entrantGrams(competition.event, category, eligibility, sex)
        : null,
  };
}
