import { athletes, meets, type CompetitionRow, type Reads } from '#persistence';
import { eligibilityOf, entrantGrams, type CategoryFinding } from '#rules';
import { categoryOfCompetition, ownDefinitions } from '../platform/competition/category.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import type { CompetitorEnterInput } from './entries.inputs.js';

/** What the age categories say of an entry. */
export interface EntryCategory {
  /** Null: nothing keeps the entry out. */
  readonly refused: Refusal | null;
  readonly notices: readonly CategoryFinding[];
  /** Mass of the implement that the category throws; null: no table says, or the competition lays down one for all. */
  readonly grams: number | null;
}

type Who = Pick<CompetitorEnterInput, 'athleteId' | 'isGuest'>;

/** Looks the athlete's age and sex up; who is only a name has neither. */
export async function entryCategory(
  at: Reads,
  competition: CompetitionRow,
  { athleteId, isGuest }: Who,
): Promise<EntryCategory> {
  const { organisationId, meetId, event } = competition;
  const meet = await meets.find(at, organisationId, meetId);
  if (!meet) throw new Error(`Competition ${competition.id} has no meet.`);
  const athlete = isGiven(athleteId) ? await athletes.find(at, organisationId, athleteId) : null;
  const [birthDate, sex] = [athlete?.birthDate ?? null, athlete?.sex ?? null];
  const category = categoryOfCompetition(competition, meet);
  const own = await ownDefinitions(at, organisationId);
  const eligibility = eligibilityOf({ birthDate, sex, guest: isGuest }, category, own);
  const [worst] = eligibility.findings.filter(({ isNotice }) => !isNotice);
  return {
    refused: worst ? refusal({ ...worst, path: [worst.field] }) : null,
    notices: eligibility.findings.filter(({ isNotice }) => isNotice),
    grams: competition.implementGrams === null ? entrantGrams(event, category, eligibility, sex) : null,
  };
}
