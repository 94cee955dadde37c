import {
  apply,
  applyVertical,
  restoreCompetition,
  restoreVertical,
  type AnyEntry,
  type CompetitionState,
  type Entry,
  type JournalItem,
  type Verdict,
  type VerticalEntry,
  type VerticalState,
} from '#rules';
import { distanceSetup, verticalSetup, type CompetitionHead } from './head.js';

/** A competition as it stands: throws and horizontal jumps in rounds, or jumps at a bar. */
export type Folded =
  | { readonly kind: 'distance'; readonly state: CompetitionState }
  | { readonly kind: 'vertical'; readonly state: VerticalState };

/** A line of the journal with its number. */
export interface NumberedItem extends JournalItem<AnyEntry> {
  readonly sequence: number;
  /** When the server recorded it; absent for what this device has just had answered. */
  readonly recordedAtMs?: number;
}

/** What the server has decided, read again exactly as it decided it. */
export function restore(head: CompetitionHead, items: readonly NumberedItem[]): Folded {
  const vertical = verticalSetup(head);
  if (vertical) {
    return {
      kind: 'vertical',
      state: restoreVertical(vertical, items as readonly JournalItem<VerticalEntry>[]),
    };
  }
  const distance = distanceSetup(head);
  if (!distance) throw new Error(`Neither a plan nor heights: ${head.title}`);
  return { kind: 'distance', state: restoreCompetition(distance, items as readonly JournalItem<Entry>[]) };
}

/** Decides one entry as the server will; the same competition again when it is refused. */
export function decide(
  folded: Folded,
  entry: AnyEntry,
): { readonly after: Folded; readonly verdict: Verdict } {
  if (folded.kind === 'vertical') {
    const { state, verdict } = applyVertical(folded.state, entry as VerticalEntry);
    return { after: { kind: 'vertical', state }, verdict };
  }
  const { state, verdict } = apply(folded.state, entry as Entry);
  return { after: { kind: 'distance', state }, verdict };
}

/** What this device has entered on top of what the server is known to have. */
export function foldWaiting(
  base: Folded,
  waiting: readonly AnyEntry[],
): { readonly folded: Folded; readonly verdicts: ReadonlyMap<string, Verdict> } {
  const verdicts = new Map<string, Verdict>();
  let folded = base;
  for (const entry of waiting) {
    const { after, verdict } = decide(folded, entry);
    folded = after;
    verdicts.set(entry.id, verdict);
  }
  return { folded, verdicts };
}
