import type { Board, Turn } from '../competition/board-shape.js';
import { nextRoundOf } from '../competition/distance-board.js';
import type { OpenCompetition } from '../desk-store.js';

/** The next trial of anybody, called or not; null: there is none. */
export function turnOfSomebody({ folded }: OpenCompetition, board: Board, key: string): Turn | null {
  const called = board.calls.find((turn) => turn.key === key);
  if (called) return called;
  const other = { key, flight: null, isJumpOff: false, isUnderProtest: false };
  if (folded.kind === 'distance') {
    const round = nextRoundOf(folded.state, key);
    return round === null ? null : { ...other, round, height: null };
  }
  const next = folded.state.competitors.find((one) => one.key === key)?.next;
  return next ? { ...other, round: next.trial, height: next.height } : null;
}
