/* What is written down at the circle beside the trials. None of it decides a place. */

export type CircleBody = NoteEntry | ExcuseEntry | CardSignedEntry;

/** What a note is about. Of an injury the words say what was done, not what it is: no diagnosis, no name. */
export const NOTE_SUBJECTS = [
  'injury',
  'implement',
  'equipment',
  'near-miss',
  'measuring',
  'conduct',
  'other',
] as const;
export type NoteSubject = (typeof NOTE_SUBJECTS)[number];

/** Something happened that may matter later. */
export interface NoteEntry {
  readonly kind: 'note';
  readonly about: NoteSubject;
  readonly text: string;
  /** Whom it is about; `null`: nobody of the competition. */
  readonly competitor: string | null;
  /** Milliseconds since the epoch. */
  readonly seenAt: number;
}

/**
 * Away at another event, with the referee's leave: called last in each round until back, which the next trial says, or
 * an entry with `to` null. In a round whose order the rules leave alone it changes nothing.
 */
export interface ExcuseEntry {
  readonly kind: 'excuse';
  readonly competitor: string;
  /** Where the competitor has gone, in words; `null`: is back. */
  readonly to: string | null;
  /** Expected back: milliseconds since the epoch; `null`: not said. */
  readonly until: number | null;
}

/** The chief judge has compared the card with what was seen and signs it. The referee's signature is another one. */
export interface CardSignedEntry {
  readonly kind: 'card-signed';
  readonly remark: string | null;
}
