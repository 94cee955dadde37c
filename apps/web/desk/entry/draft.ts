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
    isReadBack: false,
  };
}
