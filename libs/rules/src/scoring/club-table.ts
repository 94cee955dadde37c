import { add, compare, formatPoints, ZERO, type Fraction } from '../quantities/fraction.js';
import type { ClubRow } from '../result/result-document.js';
import type { ScoredRow } from './shared-points.js';

interface ClubTotal {
  readonly club: string;
  readonly points: Fraction;
  /** Every place that the club took, best first. */
  readonly places: readonly number[];
}

/**
 * The clubs of one or more events, best first; every club that entered somebody is there, also with no points. Level
 * on points, more first places decide, then more second places, and so on, as the places stand in the results (also
 * those that did not score); still level, the place is shared and the clubs are listed by code point (common
 * practice of team matches, no published text read).
 */
export function clubTable(events: readonly (readonly ScoredRow[])[]): ClubRow[] {
  const totals = totalsOf(events.flat());
  totals.sort((a, b) => compareTotals(a, b) || compareByCodePoint(a.club, b.club));
  const table: ClubRow[] = [];
  for (const [index, total] of totals.entries()) {
    const before = totals[index - 1];
    const sharesPlace = before !== undefined && compareTotals(before, total) === 0;
    const place = sharesPlace ? (table.at(-1)?.place ?? 1) : index + 1;
    table.push({ club: total.club, points: formatPoints(total.points), place });
  }
  return table;
}

function totalsOf(rows: readonly ScoredRow[]): ClubTotal[] {
  const byClub = new Map<string, { points: Fraction; places: number[] }>();
  for (const { club, place, points } of rows) {
    if (club === null) continue;
    const total = byClub.get(club) ?? { points: ZERO, places: [] };
    total.points = add(total.points, points);
    if (place !== null) total.places.push(place);
    byClub.set(club, total);
  }
  return [...byClub].map(([club, { points, places }]) => ({
    club,
    points,
    places: places.sort((a, b) => a - b),
  }));
}

/** Negative when `a` is better. */
function compareTotals(a: ClubTotal, b: ClubTotal): number {
  return compare(b.points, a.points) || comparePlaces(a.places, b.places);
}

/** At the first difference of the sorted lists the better place is one more of that place; so is one place more. */
function comparePlaces(a: readonly number[], b: readonly number[]): number {
  for (const [index, place] of a.entries()) {
    const other = b[index];
    if (other === undefined || place < other) return -1;
    if (place > other) return 1;
  }
  return a.length === b.length ? 0 : 1;
}

/** Code points, not UTF-16 units: a surrogate pair comes after every character of one unit. */
function compareByCodePoint(a: string, b: string): number {
  const [left, right] = [[...a], [...b]];
  for (const [index, character] of left.entries()) {
    const other = right[index];
    if (other === undefined) return 1;
    const difference = (character.codePointAt(0) ?? 0) - (other.codePointAt(0) ?? 0);
    if (difference !== 0) return difference;
  }
  return left.length - right.length;
}
