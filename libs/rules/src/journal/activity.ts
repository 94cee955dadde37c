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
  /**
   * By id of a held trial of which something else was ruled on afterwards (its protest, or its implement): the position
   * of the ruling that let it in. What was ruled last then answers the other question.
   */
  readonly admissions: ReadonlyMap<string, number>;
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
  const admissions = new Map<string, number>();
  const reversed = new Set<string>();
  /** Of each trial the latest ruling before the last one that let it count, and its latest query. */
  const letIn = new Map<string, number>();
  const queries = new Map<string, number>();
  for (let at = journal.length - 1; at >= 0; at--) {
    const item = journal[at]!;
    const { entry } = item;
    if (reversed.has(entry.id)) continue;
    if (needsRuling(item)) {
      const admittedAt = letIn.get(entry.id);
      const isAskedAgain = isProtested(entry) || (queries.get(entry.id) ?? -1) > (admittedAt ?? at);
      if (admittedAt !== undefined && isAskedAgain) admissions.set(entry.id, admittedAt);
      else if (rulings.get(entry.id)?.decision !== 'count') continue;
    }
    inEffect[at] = !needsRuling(item);
    if (entry.kind === 'reversal') reversed.add(entry.entry);
    if (entry.kind === 'implement-query')
      for (const attempt of entry.attempts) if (!queries.has(attempt)) queries.set(attempt, at);
    if (entry.kind !== 'ruling') continue;
    const { entry: target, decision } = entry;
    if (!rulings.has(target)) rulings.set(target, { decision, at });
    else if (decision === 'count' && !letIn.has(target)) letIn.set(target, at);
  }
  return { inEffect, rulings, admissions, reversed };
}

function isProtested(entry: AnyEntry): boolean {
  return 'protested' in entry && entry.protested !== null && entry.protested !== false;
}

/** Whether an item that had to be ruled on was let in, and still is. */
export function isLetIn(activity: Activity, { entry: { id } }: JournalItem<AnyEntry>): boolean {
  return activity.admissions.has(id) || activity.rulings.get(id)?.decision === 'count';
}
