/**
 * How a field becomes flights. `lot`: by lot, as equal in size as can be. `seed marks`: by the marks with which the
 * competitors were entered, the best flight last. `equal strength`: each flight as strong as the other.
 */
export type DrawMethod = 'lot' | 'seed marks' | 'equal strength';

export interface DrawEntry {
  /** Names the competitor in the draw; unique. */
  readonly key: string;
  /** Whole units of the competition; `null`: entered without a mark, behind all who have one. */
  readonly seedMark: number | null;
  readonly club: string | null;
}

export interface DrawTerms {
  /** The published seed: 1 to 200 printable ASCII characters. A different one for each competition and stage. */
  readonly seed: string;
  readonly method: DrawMethod;
  /** How many flights, at most as many as competitors; 1 for a plain order. */
  readonly flights: number;
  /** Whether clubmates are spread over the flights. Where seed marks decide the flight they are not. */
  readonly clubmatesApart: boolean;
}
