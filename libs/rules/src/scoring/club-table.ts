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
 * What becomes of clubs that are level on points: more first places decide, then more second places, and so on
 * (`places`), or they share the place (`shared`). Both are common practice of team matches, the first of European
 * ones, the second of meets in the United States; no published text read.
 */
export type ClubTies = 'places' | 'shared';

/** How a club stands among those that have as many points. */
export interface ClubTie {
  /** It has more of this place than the club behind it, which decided; `null`: nobody was put behind it. */
  readonly moreOf: number | null;
  /** It has fewer of this place than the club before it, which decided; `null`: nobody was put before it. */
  readonly fewerOf: number | null;
  /** It shares its place. */
  readonly isShared: boolean;
}

export interface RankedClub extends ClubRow {
  /** `null`: no other club has as many points. */
  readonly tie: ClubTie | null;
}

/**
 * The clubs of one or more events, best first; every club that entered somebody is there, also with no points. Places
 * count as they stand in the results, also those that did not score; who is still level shares the place, and is
 * listed by code point.
 */
export function rankClubs(events: readonly (readonly ScoredRow[])[], ties: ClubTies): RankedClub[] {
  const separation = separationBy(ties);
  const groups = levelGroups(totalsOf(events.flat()), separation);
  let place = 1;
  return groups.flatMap((group, index) => {
    const [total, before, behind] = [group[0]!, groups[index - 1]?.[0], groups[index + 1]?.[0]];
    const fewerOf = before ? decidingPlace(separation(before, total)) : null;
    const moreOf = behind ? decidingPlace(separation(total, behind)) : null;
    const isShared = group.length > 1;
    const tie = isShared || fewerOf !== null || moreOf !== null ? { moreOf, fewerOf, isShared } : null;
    const own = place;
    place += group.length;
    return group.map(({ club, points }) => ({ club, points: formatPoints(points), place: own, tie }));
  });
}

/** The same without what is said of ties: the clubs of a result document, which always go by places. */
export function clubTable(events: readonly (readonly ScoredRow[])[]): ClubRow[] {
  return rankClubs(events, 'places').map(({ club, points, place }) => ({ club, points, place }));
}

/** Best first; each group shares a place. */
function levelGroups(
  totals: ClubTotal[],
  separation: (a: ClubTotal, b: ClubTotal) => Separation,
): ClubTotal[][] {
  totals.sort((a, b) => separation(a, b).sign || compareByCodePoint(a.club, b.club));
  const groups: ClubTotal[][] = [];
  for (const total of totals) {
    const group = groups.at(-1);
    if (group && separation(group[0]!, total).sign === 0) group.push(total);
    else groups.push([total]);
  }
  return groups;
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

/** What separates two clubs: their points, or the place of which one has more. */
interface Separation {
  readonly by: 'points' | number;
  /** Negative: the first is the better; 0: nothing separates them. */
  readonly sign: number;
}

function separationBy(ties: ClubTies): (a: ClubTotal, b: ClubTotal) => Separation {
  return (a, b) => {
    const sign = compare(b.points, a.points);
    return sign !== 0 || ties === 'shared' ? { by: 'points', sign } : separationByPlaces(a.places, b.places);
  };
}

/** At the first difference of the sorted lists the better place is one more of that place; so is one place more. */
function separationByPlaces(a: readonly number[], b: readonly number[]): Separation {
  for (let index = 0; index < Math.max(a.length, b.length); index++) {
    const [mine, other] = [a[index] ?? Infinity, b[index] ?? Infinity];
    if (mine !== other) return { by: Math.min(mine, other), sign: mine < other ? -1 : 1 };
  }
  return { by: 'points', sign: 0 };
}

function decidingPlace({ by }: Separation): number | null {
  return by === 'points' ? null : by;
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
