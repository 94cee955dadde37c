import type { Card } from '../card.js';
import { activityOf } from '../journal/activity.js';
import type { JournalItem } from '../journal/journal-item.js';
import { gather } from './attempts.js';
import { place } from './placing.js';
import type { CompetitionSetup } from './setup.js';

/** What counts of a journal: the card of its state, and whether the result is official. */
export interface Counted<C> {
  readonly card: C;
  readonly signedOff: boolean;
}

/** The card and the sign-off of the state that a journal describes, without what only those at the circle look at. */
export function countedOf(setup: CompetitionSetup, journal: readonly JournalItem[]): Counted<Card> {
  const gathered = gather(journal, activityOf(journal));
  return { card: place(setup, gathered).card, signedOff: gathered.decisions.signedOff };
}
