import type { AnyEntry } from './any-entry.js';
import type { RulingDecision } from './entry.js';
import type { JournalItem } from './journal-item.js';
import { RULED_HOLDS } from './verdict.js';

/** Which items of a journal have effect, and how open questions were ruled. */
export interface Activity {
  /** By position: in effect as entered (accepted and not reversed). */
  readonly inEffect: readonly boolean[];
  /** By id of the entry ruled on: the decision in force and the position of its ruling. */
  readonly rulings: ReadonlyMap<string, { readonly decision: RulingDecision; readonly at: number }>;
  /** Ids of entries taken back. */
  readonly reversed: ReadonlySet<string>;
}

/** Whether an item has no effect until a referee rules that it counts. */
export function needsRuling({ hold }: JournalItem<AnyEntry>): boolean {
  return hold !== null && RULED_HOLDS.has(hold);
}

/**
 * Reversals and rulings name earlier entries only, so one pass from the newest to the oldest settles what is in
 * effect: a reversal that is itself reversed no longer reverses.
 */
export function activityOf(journal: readonly JournalItem<AnyEntry>[]): Activity {
  const inEffect = new Array<boolean>(journal.length).fill(false);
  const rulings = new Map<string, { decision: RulingDecision; at: number }>();
  const reversed = new Set<string>();
  for (let at = journal.length - 1; at >= 0; at--) {
    const item = journal[at]!;
    const { entry } = item;
    if (reversed.has(entry.id)) continue;
    const counted = rulings.get(entry.id)?.decision === 'count';
    if (needsRuling(item) && !counted) continue;
    inEffect[at] = !needsRuling(item);
    if (entry.kind === 'reversal') reversed.add(entry.entry);
    if (entry.kind === 'ruling' && !rulings.has(entry.entry)) {
      rulings.set(entry.entry, { decision: entry.decision, at });
    }
  }
  return { inEffect, rulings, reversed };
}
