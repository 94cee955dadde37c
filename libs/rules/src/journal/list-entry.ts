/*
 * Entries about the start list of a competition that is going on. The list itself is in the setup, as it is now; the
 * journal keeps who changed it, when and why. No name stands here: a journal cannot be emptied of one.
 */

export type ListBody = LateEntryEntry | MatchEntry | BibsEntry | FlightEntry;

/** Somebody who was not on the list came to the circle and is called last; who it is, the director says later. */
export interface LateEntryEntry {
  readonly kind: 'late-entry';
  readonly competitor: string;
  readonly bib: string;
  readonly flight: string | null;
}

/** Who was entered at the circle is known now, or is accepted under the name that was written down. */
export interface MatchEntry {
  readonly kind: 'match';
  readonly competitor: string;
}

/** These competitors wear these bibs: two that were swapped, or one that was written down wrongly. */
export interface BibsEntry {
  readonly kind: 'bibs';
  readonly bibs: readonly { readonly competitor: string; readonly bib: string }[];
  readonly reason: string;
}

/** Goes last in another flight, before the first trial. */
export interface FlightEntry {
  readonly kind: 'flight';
  readonly competitor: string;
  readonly flight: string;
  readonly reason: string;
}

const LIST_KINDS: ReadonlySet<string> = new Set<ListBody['kind']>(['late-entry', 'match', 'bibs', 'flight']);

/** Whether an entry of this kind changes the start list. */
export function isAboutList(kind: string): kind is ListBody['kind'] {
  return LIST_KINDS.has(kind);
}
