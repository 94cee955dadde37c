import type { FoulCode } from '#rules';
import type { Turn } from '../competition/board-shape.js';

/** What an official is about to enter, until it is recorded. */
export interface Draft {
  /**
   * Whose trial it is, fixed with the first key: when another device enters something meanwhile, what is typed here
   * does not slip to the next competitor. Null: whoever is up.
   */
  readonly turn: Turn | null;
  readonly text: string;
  readonly wind: string;
  readonly isWindUnmeasured: boolean;
  readonly field: 'mark' | 'wind';
  /** Of a jump at a bar. */
  readonly outcome: 'cleared' | 'failed' | 'passed' | 'retired' | null;
  readonly foul: FoulCode | null;
  /** Of a failure that is protested: what was measured, as it is typed; null: it is not protested. */
  readonly protested: string | null;
  /** `none`: no implement is named; null: the one of the last trial. */
  readonly implementId: string | null;
  readonly isReadBack: boolean;
}

export function emptyDraft(): Draft {
  return {
    turn: null,
    text: '',
    wind: '',
    isWindUnmeasured: false,
    field: 'mark',
    outcome: null,
    foul: null,
    protested: null,
    implementId: null,
    isReadBack: false,
  };
}
