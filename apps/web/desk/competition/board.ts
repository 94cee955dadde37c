import { eventOf } from '#rules';
import type { OpenCompetition } from '../desk-store.js';
import type { Board } from './board-shape.js';
import { distanceBoard } from './distance-board.js';
import { eventIn } from './head.js';
import { verticalBoard } from './vertical-board.js';

export function boardOf(open: OpenCompetition): Board {
  return open.folded.kind === 'vertical'
    ? verticalBoard(open.kept.head, open.folded.state)
    : distanceBoard(open.folded.state);
}

/** Whether a wind belongs to every trial. */
export function hasWind({ kept: { head } }: OpenCompetition): boolean {
  return eventOf(eventIn(head)).hasWind(head.isIndoor);
}
