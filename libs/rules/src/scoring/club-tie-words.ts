import { ordinal } from '../ranking/decision.js';
import type { ClubTie } from './club-table.js';

const NAMES = ['first', 'second', 'third'];

/** What is said beside a club's place, such as `tied; more first places`. */
export function clubTieWords({ moreOf, fewerOf, isShared }: ClubTie): string {
  const parts = [
    'tied',
    fewerOf !== null && `fewer ${nameOf(fewerOf)} places`,
    moreOf !== null && `more ${nameOf(moreOf)} places`,
    isShared && 'place shared',
  ];
  return parts.filter((part) => part !== false).join('; ');
}

function nameOf(place: number): string {
  return NAMES[place - 1] ?? ordinal(place);
}
