import type { Decision } from './decision.js';
import { bestOf, hasValid, separation, type Keys } from './keys.js';

export interface Placed {
  /** Position in the order of competition. */
  readonly competitor: number;
  /** From 1; competitors who share a place leave the next ones empty (1, 1, 3). */
  readonly place: number;
  /** Whether the place is shared. */
  readonly equal: boolean;
  readonly decidedBy: Decision;
}

export interface Ranking {
  /** All with a valid trial, best first; equals in the order of competition. */
  readonly placed: readonly Placed[];
  /** The others, in the order of competition. */
  readonly unplaced: readonly number[];
}

/**
 * Ranks some of the competitors of a throw or a horizontal jump: by the best mark, ties by the second best, the
 * third best and so on; who is level throughout shares the place, also the first (World Athletics TR25.22, from
 * memory). When one of those level on the best mark has a valid trial that was not measured, the next best marks
 * cannot be compared and all of them share the place. Valid trials of which none was measured rank after every mark.
 *
 * @param members positions in the order of competition, rising.
 */
export function rank(keys: Keys, members: readonly number[]): Ranking {
  const order: number[] = [];
  const unplaced: number[] = [];
  for (const member of members) (hasValid(keys, member) ? order : unplaced).push(member);
  order.sort((a, b) => separation(keys, b, a));
  levelUndecidable(keys, order);
  return { placed: numbered(keys, order), unplaced };
}

/** Brings every group in which the next best marks decide nothing back into the order of competition. */
function levelUndecidable(keys: Keys, order: number[]): void {
  for (let from = 0; from < order.length; ) {
    const to = endOfLevel(keys, order, from);
    if (to - from > 1 && hasUnmeasured(keys, order, from, to)) {
      const group = order.slice(from, to).sort((a, b) => a - b);
      for (let at = from; at < to; at++) order[at] = group[at - from]!;
    }
    from = to;
  }
}

/** Where the run of those level on the best mark that starts at `from` ends. */
function endOfLevel(keys: Keys, order: readonly number[], from: number): number {
  const best = bestOf(keys, order[from]!);
  let to = from + 1;
  while (to < order.length && bestOf(keys, order[to]!) === best) to++;
  return to;
}

function hasUnmeasured(keys: Keys, order: readonly number[], from: number, to: number): boolean {
  for (let at = from; at < to; at++) if (keys.unmeasured[order[at]!] === 1) return true;
  return false;
}

function numbered(keys: Keys, order: readonly number[]): Placed[] {
  const decisions = decisionsOf(keys, order);
  let place = 0;
  return order.map((competitor, at): Placed => {
    const decidedBy = decisions[at]!;
    if (decidedBy !== 'equal') place = at + 1;
    return { competitor, place, equal: decidedBy === 'equal' || decisions[at + 1] === 'equal', decidedBy };
  });
}

function decisionsOf(keys: Keys, order: readonly number[]): Decision[] {
  const decisions: Decision[] = [];
  for (let from = 0; from < order.length; ) {
    const to = endOfLevel(keys, order, from);
    const undecidable = hasUnmeasured(keys, order, from, to);
    decisions.push(from === 0 ? 'first' : 1);
    for (let at = from + 1; at < to; at++) {
      const nth = undecidable ? 0 : separation(keys, order[at - 1]!, order[at]!);
      decisions.push(nth === 0 ? 'equal' : nth);
    }
    from = to;
  }
  return decisions;
}

/** Where one competitor stands among others. */
export interface Position {
  readonly place: number;
  /** Whether the place is shared. */
  readonly equal: boolean;
  /** Somebody level on the best mark has an unmeasured valid trial, so no next best mark counts. */
  readonly undecidable: boolean;
}

/**
 * The position of one of the members without ranking the others: always what {@link rank} gives. `null` without a
 * valid trial.
 */
export function positionIn(keys: Keys, members: readonly number[], competitor: number): Position | null {
  if (!hasValid(keys, competitor)) return null;
  const best = bestOf(keys, competitor);
  let better = 0;
  let betterByNext = 0;
  let level = 0;
  let levelThroughout = 0;
  let undecidable = false;
  for (const member of members) {
    const other = bestOf(keys, member);
    if (other > best) better++;
    if (other !== best || !hasValid(keys, member)) continue;
    level++;
    undecidable ||= keys.unmeasured[member] === 1;
    const nth = separation(keys, member, competitor);
    if (nth > 0) betterByNext++;
    if (nth === 0) levelThroughout++;
  }
  if (undecidable) return { place: 1 + better, equal: level > 1, undecidable };
  return { place: 1 + better + betterByNext, equal: levelThroughout > 1, undecidable };
}
