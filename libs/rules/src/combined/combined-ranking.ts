import type { RuleSetCode } from '../codes.js';
import { cited } from '../rule-sets/citing.js';
import type { Cited } from '../rule-sets/rule-set.js';

/**
 * What becomes of equal totals. `stay`: the place is shared. `more events`: the better one had more points than all
 * others concerned in more events; then whose best event is worth more, then the second best, and so on.
 */
export type CombinedTies = 'stay' | 'more events';

/** Which way the newest book of each goes. Older books of World Athletics broke ties, too; since when not was not seen. */
export const COMBINED_TIES: Readonly<Record<RuleSetCode, Cited<CombinedTies>>> = {
  WA: cited('stay', 'WA TR39, ties', 'memory', 'Older editions: more events, then the best event.'),
  WMA: cited('stay', 'WMA, as WA TR39, ties', 'memory'),
  USATF: cited(
    'more events',
    'USATF, combined events, ties',
    'read in part',
    'Quoted in a discussion of rules.',
  ),
  NCAA: cited(
    'more events',
    'NCAA, combined events, ties',
    'read in part',
    'Quoted in a discussion of rules.',
  ),
  NFHS: cited('stay', 'NFHS, combined events, ties', 'constructed', 'No text was seen: nothing is broken.'),
};

/** What separates a competitor from the one placed just before. */
export type CombinedDecision = 'first' | 'points' | 'more events' | 'best events' | 'equal';

export interface CombinedPlacing<R> {
  readonly row: R;
  readonly place: number;
  readonly equal: boolean;
  readonly decidedBy: CombinedDecision;
}

/** A total with the points of each event, aligned between the rows. */
export interface Total {
  readonly points: number;
  readonly byEvent: readonly number[];
}

/** Ranks totals, best first; who stays level keeps the order given. */
export function rankTotals<R extends Total>(rows: readonly R[], ties: CombinedTies): CombinedPlacing<R>[] {
  const placings: CombinedPlacing<R>[] = [];
  for (const level of levelOnPoints(rows)) {
    for (const group of ties === 'stay' ? [{ rows: level, before: null }] : broken(level)) {
      const place = placings.length + 1;
      const equal = group.rows.length > 1;
      group.rows.forEach((row, at) => {
        const decidedBy = at > 0 ? 'equal' : place === 1 ? 'first' : decisionOn(row, group);
        placings.push({ row, place, equal, decidedBy });
      });
    }
  }
  return placings;
}

function levelOnPoints<R extends Total>(rows: readonly R[]): R[][] {
  const levels: R[][] = [];
  for (const row of rows.toSorted((a, b) => b.points - a.points)) {
    const level = levels.at(-1);
    if (level?.[0]?.points === row.points) level.push(row);
    else levels.push([row]);
  }
  return levels;
}

interface Group<R> {
  readonly rows: readonly R[];
  /** Who won the most events when the group before was parted off; `null`: more points parted them. */
  readonly before: readonly R[] | null;
}

/**
 * Those level on points, parted. The best are found and placed, then the others concerned are looked at again, as a
 * tie for the next place (with more than two, constructed: the text speaks of the better one only).
 */
function broken<R extends Total>(level: readonly R[]): Group<R>[] {
  const groups: Group<R>[] = [];
  let left = level;
  let before: readonly R[] | null = null;
  while (left.length > 0) {
    const concerned = left;
    const leading = most(concerned, (row) => [eventsWon(row, concerned)]);
    const best = most(leading, ({ byEvent }) => byEvent.toSorted((a, b) => b - a));
    groups.push({ rows: best, before });
    before = leading;
    left = concerned.filter((row) => !best.includes(row));
  }
  return groups;
}

function decisionOn<R>(row: R, { before }: Group<R>): CombinedDecision {
  if (before === null) return 'points';
  return before.includes(row) ? 'best events' : 'more events';
}

/** In how many events a row has more points than every other one concerned. */
function eventsWon<R extends Total>(row: R, level: readonly R[]): number {
  const others = level.filter((other) => other !== row);
  return row.byEvent.filter((points, event) => others.every((other) => points > (other.byEvent[event] ?? 0)))
    .length;
}

/** All rows whose key is the greatest, compared from the front. */
function most<R>(rows: readonly R[], keyOf: (row: R) => readonly number[]): R[] {
  const keys = rows.map(keyOf);
  const greatest = keys.reduce((best, key) => (compareKeys(key, best) > 0 ? key : best));
  return rows.filter((_, at) => compareKeys(keys[at]!, greatest) === 0);
}

function compareKeys(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}
