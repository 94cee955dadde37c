import type { AnyEntry, AnyEntryKind } from './any-entry.js';
import type { JournalState } from './journal-state.js';

const AMENDMENTS: ReadonlySet<AnyEntryKind> = new Set([
  'correction',
  'jump-correction',
  'move',
  'jump-move',
  'reversal',
  'replacement',
  'wind',
]);

const TRIALS: ReadonlySet<AnyEntryKind> = new Set(['attempt', 'jump', 'jump-off']);

/** Whether an entry of this kind is a trial of a competitor. */
export function isTrial(kind: AnyEntryKind): boolean {
  return TRIALS.has(kind);
}

/** Whether an entry changes an earlier one without being a decision. */
export function isAmendment(entry: AnyEntry): boolean {
  return AMENDMENTS.has(entry.kind);
}

/** The ids that an entry names, with the field that names them. */
export function targetsOf(entry: AnyEntry): { readonly field: string; readonly ids: readonly string[] } {
  switch (entry.kind) {
    case 'wind':
    case 'correction':
    case 'jump-correction':
    case 'replacement':
      return { field: 'attempt', ids: [entry.attempt] };
    case 'reversal':
    case 'ruling':
      return { field: 'entry', ids: [entry.entry] };
    case 'move':
    case 'jump-move':
      return { field: 'moves', ids: entry.moves.map((move) => move.attempt) };
    case 'implement-query':
      return { field: 'attempts', ids: entry.attempts };
    default:
      return { field: '', ids: [] };
  }
}

/**
 * Whether a change waits for the referee: an official takes back or corrects what he entered himself until the next
 * competitor acts; after that, and for every replacement trial, the referee decides.
 */
export function awaitsReferee(state: JournalState, entry: AnyEntry): boolean {
  if (entry.by !== 'official' || !isAmendment(entry)) return false;
  if (entry.kind === 'replacement') return true;
  const { ids } = targetsOf(entry);
  return !ids.every((id) => isOwnAndLast(state, id, entry.actor, ids));
}

function isOwnAndLast(state: JournalState, id: string, actor: string, also: readonly string[]): boolean {
  const at = state.journal.findIndex((item) => item.entry.id === id);
  const target = state.journal[at]?.entry;
  if (!target || target.actor !== actor || target.by !== 'official') return false;
  const whose = 'competitor' in target ? target.competitor : null;
  return !state.journal.slice(at + 1).some(({ entry }) => {
    const another = 'competitor' in entry && entry.competitor !== whose;
    return isTrial(entry.kind) && another && !also.includes(entry.id);
  });
}
