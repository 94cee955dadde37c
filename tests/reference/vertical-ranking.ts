import { stepsOf } from './marks.js';
import { trialsOf, type Competitor, type JumpOffRound } from './shapes.js';

/** What ranks a competitor in a vertical jump: the best height cleared, as an index of the heights, and failures. */
export interface Clearance {
  height: number;
  failuresAtHeight: number;
  totalFailures: number;
}

function failuresIn(cell: string): number {
  return [...cell].filter((sign) => sign === 'X').length;
}

/** Null when no height was cleared. Failures above the best height do not count. */
export function clearanceOf(competitor: Competitor): Clearance | null {
  const cells = trialsOf(competitor);
  let height = -1;
  cells.forEach((cell, index) => {
    if (cell.endsWith('O')) height = index;
  });
  if (height < 0) return null;
  const upTo = cells.slice(0, height + 1);
  return {
    height,
    failuresAtHeight: failuresIn(cells[height] ?? ''),
    totalFailures: upTo.reduce((sum, cell) => sum + failuresIn(cell), 0),
  };
}

/** What separates two, and above zero when `a` is better; null when they are level. */
export function clearanceDifference(a: Clearance, b: Clearance): { sign: number; by: string } | null {
  if (a.height !== b.height) return { sign: a.height - b.height, by: 'height' };
  if (a.failuresAtHeight !== b.failuresAtHeight) {
    return { sign: b.failuresAtHeight - a.failuresAtHeight, by: 'failures at height' };
  }
  if (a.totalFailures !== b.totalFailures)
    return { sign: b.totalFailures - a.totalFailures, by: 'total failures' };
  return null;
}

export function clearancePlaces(field: readonly (Clearance | null)[]): (number | null)[] {
  return field.map((one) => {
    if (one === null) return null;
    const better = field.filter(
      (other) => other !== null && (clearanceDifference(other, one)?.sign ?? 0) > 0,
    );
    return 1 + better.length;
  });
}

/** A jump-off as groups of bibs, the best first; those within a group share the place. */
export interface JumpOffState {
  remaining: string[];
  out: string[][];
}

function withTry(state: JumpOffState, round: JumpOffRound, signs: string): string[] {
  return state.remaining.filter((bib) => {
    const sign = round.tries[bib];
    return sign !== undefined && signs.includes(sign);
  });
}

/** One round: those who give up are behind everybody who did not; those who fail while another clears are out. */
export function afterRound(state: JumpOffState, round: JumpOffRound): JumpOffState {
  const gaveUp = withTry(state, round, '-r');
  const failed = withTry(state, round, 'X');
  const cleared = withTry(state, round, 'O');
  const beaten = cleared.length > 0 ? failed : [];
  const remaining = state.remaining.filter((bib) => !gaveUp.includes(bib) && !beaten.includes(bib));
  const groups = [beaten, gaveUp].filter((group) => group.length > 0);
  return { remaining, out: [...groups, ...state.out] };
}

/** A jump-off is decided when at most one is left: nobody is, when all who were left gave up in the same round. */
export function isDecided(state: JumpOffState): boolean {
  return state.remaining.length <= 1;
}

export function jumpOffGroups(bibs: string[], rounds: readonly JumpOffRound[]): string[][] {
  const end = rounds.reduce(afterRound, { remaining: bibs, out: [] } as JumpOffState);
  return [end.remaining, ...end.out].filter((group) => group.length > 0);
}

/** The best of the height of the competition and those cleared in the jump-off, as written. */
export function markWithJumpOff(bib: string, height: string, rounds: readonly JumpOffRound[]): string {
  let mark = height;
  for (const round of rounds) {
    if (round.tries[bib] === 'O' && stepsOf(round.height) > stepsOf(mark)) mark = round.height;
  }
  return mark;
}
