/** What is looked at, in the order of looking; the words stand in the report. */
export const ASPECTS = {
  guards: 'what keeps the journal as it is, is switched on',
  orphans: 'no row names another one that is not there',
  sequence: 'every journal is numbered 1, 2, … n without a gap',
  reasons: 'every decision about another entry says why, and the other entry is there',
  briefs: 'what club tables read of a journal is what the journal says',
  sealed: 'what is official is what was signed, to the last place',
  archives: 'every archived sheet counts to the result that was archived with it',
  secondCount: 'a second implementation counts the same',
  live: 'the tables that are served are what the journals say',
} as const;

export type Aspect = keyof typeof ASPECTS;

/** Something that is not as it must be. */
export interface Finding {
  readonly aspect: Aspect;
  readonly where: string;
  readonly what: string;
}
