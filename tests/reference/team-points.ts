import {
  add,
  compare,
  divide,
  fraction,
  fractionText,
  fromNumber,
  ZERO,
  type Fraction,
} from './fractions.js';
import type { Competitor, Scoring } from './shapes.js';

/** Somebody in a result as the team scoring sees him; unplaced and guests have no place. */
export interface Scored {
  club: string;
  place: number | null;
}

export interface ClubLine {
  club: string;
  points: string;
  place: number;
}

export function clubOf(competitor: Competitor): string {
  return competitor.club ?? '';
}

/** Who may score: at most so many of a club, the better placed first. The list is in result order. */
function scorers(list: readonly Scored[], scoring: Scoring): Set<Scored> {
  const limit = scoring.scorersPerClub ?? Infinity;
  const may = new Set<Scored>();
  for (const one of list) {
    if (one.place === null || one.club === '') continue;
    const ahead = [...may].filter((other) => other.club === one.club).length;
    if (ahead < limit) may.add(one);
  }
  return may;
}

function pointsOfPlaces(scoring: Scoring, from: number, count: number): Fraction {
  let sum = ZERO;
  for (let place = from; place < from + count; place += 1)
    sum = add(sum, fromNumber(scoring.places[place - 1] ?? 0));
  return sum;
}

/** The points of everybody in a result, in its order: those who share a place share what the places give. */
export function pointsOf(list: readonly Scored[], scoring: Scoring): Fraction[] {
  const may = scorers(list, scoring);
  const hold = scoring.nonScorers === 'hold';
  const taking = list.filter((one) => one.place !== null && (hold || may.has(one)));
  return list.map((one) => {
    if (!may.has(one)) return ZERO;
    const better = taking.filter((other) => (other.place ?? 0) < (one.place ?? 0)).length;
    const level = taking.filter((other) => other.place === one.place).length;
    return divide(pointsOfPlaces(scoring, better + 1, level), level);
  });
}

interface ClubTotal {
  club: string;
  points: Fraction;
  placings: number[];
}

function byCodePoint(a: string, b: string): number {
  const left = Array.from(a, (sign) => sign.codePointAt(0) ?? 0);
  const right = Array.from(b, (sign) => sign.codePointAt(0) ?? 0);
  for (let at = 0; at < Math.min(left.length, right.length); at += 1) {
    const apart = (left[at] ?? 0) - (right[at] ?? 0);
    if (apart !== 0) return apart;
  }
  return left.length - right.length;
}

/** More points; then more first places as placed in the results, more second places, and so on to the worst place. */
function clubDifference(a: ClubTotal, b: ClubTotal, leaveTies: boolean): number {
  const points = compare(a.points, b.points);
  if (points !== 0 || leaveTies) return points;
  for (let place = 1; place <= Math.max(0, ...a.placings, ...b.placings); place += 1) {
    const of = (total: ClubTotal) => total.placings.filter((one) => one === place).length;
    if (of(a) !== of(b)) return of(a) - of(b);
  }
  return 0;
}

/** All clubs of the results, also those without points. `leaveTies`: clubs level on points share the place. */
export function clubTable(
  results: readonly (readonly Scored[])[],
  points: readonly (readonly Fraction[])[],
  leaveTies = false,
): ClubLine[] {
  const names = [...new Set(results.flat().map((one) => one.club))].filter((club) => club !== '');
  const totals = names.map((club): ClubTotal => {
    const total: ClubTotal = { club, points: fraction(0n), placings: [] };
    results.forEach((list, event) =>
      list.forEach((one, at) => {
        if (one.club !== club) return;
        total.points = add(total.points, points[event]?.[at] ?? ZERO);
        if (one.place !== null) total.placings.push(one.place);
      }),
    );
    return total;
  });
  const lines = totals.map((total) => ({
    club: total.club,
    points: fractionText(total.points),
    place: 1 + totals.filter((other) => clubDifference(other, total, leaveTies) > 0).length,
  }));
  return lines.sort((a, b) => a.place - b.place || byCodePoint(a.club, b.club));
}
