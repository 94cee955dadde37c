import type { Series } from '../trial.js';

/**
 * What ranks competitors in throws and horizontal jumps, as one block of integers: for each competitor a row of
 * `width` marks, best first, filled up with zeros (a missing mark loses to any mark, and no mark is zero).
 * Competitors are named by their position in the order of competition.
 */
export interface Keys {
  readonly width: number;
  readonly marks: Int32Array;
  /** 1: has a valid trial that was not measured. */
  readonly unmeasured: Uint8Array;
}

/**
 * @param upTo the last round that counts, 1-based.
 * @param width marks for which there is room in a row; at least `upTo`.
 */
export function keysOf(series: readonly Series[], upTo: number, width = upTo): Keys {
  const marks = new Int32Array(series.length * width);
  const unmeasured = new Uint8Array(series.length);
  for (let competitor = 0; competitor < series.length; competitor++) {
    const trials = series[competitor]!;
    const end = Math.min(upTo, trials.length);
    for (let round = 0; round < end; round++) {
      const trial = trials[round];
      if (!trial) continue;
      if (trial.outcome === 'unmeasured') unmeasured[competitor] = 1;
      if (trial.outcome === 'valid') insertMark(marks, competitor * width, trial.mark!);
    }
  }
  return { width, marks, unmeasured };
}

/** The keys as they would be if one competitor had one more mark. Its row must have room for it. */
export function withMark(keys: Keys, competitor: number, mark: number): Keys {
  const marks = keys.marks.slice();
  insertMark(marks, competitor * keys.width, mark);
  return { ...keys, marks };
}

/** Puts a mark in its place in the row that starts at `start`: what is smaller moves back by one. */
function insertMark(marks: Int32Array, start: number, mark: number): void {
  let moved = mark;
  for (let at = start; moved > 0; at++) {
    const here = marks[at]!;
    if (moved <= here) continue;
    marks[at] = moved;
    moved = here;
  }
}

/** 0: none measured. */
export function bestOf(keys: Keys, competitor: number): number {
  return markAt(keys, competitor, 1);
}

/** The n-th best mark, n from 1; 0: there are fewer. */
export function markAt(keys: Keys, competitor: number, nth: number): number {
  return keys.marks[competitor * keys.width + nth - 1]!;
}

/** Whether the competitor has a valid trial, measured or not. */
export function hasValid(keys: Keys, competitor: number): boolean {
  return keys.unmeasured[competitor] === 1 || bestOf(keys, competitor) > 0;
}

/**
 * What separates two competitors: 0 = all marks are level; otherwise n, when the n-th best marks are the first that
 * differ, positive if `a` has the better one.
 */
export function separation(keys: Keys, a: number, b: number): number {
  const { width, marks } = keys;
  for (let nth = 0; nth < width; nth++) {
    const difference = marks[a * width + nth]! - marks[b * width + nth]!;
    if (difference !== 0) return difference > 0 ? nth + 1 : -(nth + 1);
  }
  return 0;
}
