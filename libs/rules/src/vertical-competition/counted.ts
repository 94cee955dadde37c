import type { Counted } from '../competition/counted.js';
import { activityOf } from '../journal/activity.js';
import type { JournalItem } from '../journal/journal-item.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import type { VerticalEntry } from './entry.js';
import { gather } from './jumps.js';
import { place } from './placing.js';
import type { VerticalSetup } from './setup.js';

/** The card and the sign-off of the state that a journal describes, without what only those at the bar look at. */
export function countedVerticalOf(
  setup: VerticalSetup,
  journal: readonly JournalItem<VerticalEntry>[],
): Counted<VerticalCard> {
  const gathered = gather(journal, activityOf(journal));
  return { card: place(setup, gathered).card, signedOff: gathered.decisions.signedOff };
}
