import type { Activity } from './activity.js';
import type { AnyEntry, AnyEntryKind } from './any-entry.js';
import type { JournalItem } from './journal-item.js';

/** Entries after which a signed card still says what was signed. */
const LEAVE_THE_CARD: ReadonlySet<AnyEntryKind> = new Set([
  'card-signed',
  'sign-off',
  'note',
  'excuse',
  'match',
]);

export interface CardSignature {
  readonly entry: string;
  /** Position in the journal, from 1. */
  readonly sequence: number;
  /** Nothing that stands on the card was entered since. */
  readonly isCurrent: boolean;
}

/** The chief judge's last signature that was not taken back; `null`: there is none. */
export function cardSignatureOf({
  journal,
  activity,
}: {
  readonly journal: readonly JournalItem<AnyEntry>[];
  readonly activity: Activity;
}): CardSignature | null {
  const isHeld = (at: number): boolean => activity.inEffect[at] === true;
  const at = journal.findLastIndex(({ entry }, index) => entry.kind === 'card-signed' && isHeld(index));
  const signed = journal[at];
  if (!signed) return null;
  const changedLater = journal
    .slice(at + 1)
    .some(({ entry }, index) => isHeld(at + 1 + index) && !LEAVE_THE_CARD.has(entry.kind));
  return { entry: signed.entry.id, sequence: at + 1, isCurrent: !changedLater };
}
