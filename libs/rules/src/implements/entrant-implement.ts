import type { EventCode } from '../codes.js';
import type { CompetitionCategory } from '../categories/competition-category.js';
import type { Eligibility } from '../categories/eligibility.js';
import { implementFor } from './implement-for.js';
import { isThrowEvent } from './throw-event.js';

/**
 * The mass in grams that somebody throws in a competition of a category: that of the category competed in, also for
 * who enters a harder one; where several compete together (`45+`), that of the own category. `null`: no table says.
 */
export function entrantGrams(
  event: EventCode,
  { rules, sex, onDate }: CompetitionCategory,
  { own, competition }: Eligibility,
  entrantSex: 'M' | 'W' | 'X' | null,
): number | null {
  if (!isThrowEvent(event) || !competition) return null;
  const age = competition.isOpenEnded ? own?.code : competition.band.code;
  const decided = [sex, entrantSex].find((one) => one === 'M' || one === 'W');
  if (age === undefined || (decided !== 'M' && decided !== 'W')) return null;
  return implementFor(rules, event, decided, age, onDate)?.grams ?? null;
}
