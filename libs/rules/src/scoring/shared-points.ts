import { add, divide, fraction, ZERO, type Fraction } from '../quantities/fraction.js';
import type { Scoring } from './scoring.js';

/** One line of a result as far as scoring looks at it. */
export interface PlacedRow {
  readonly bib: string;
  /** `null`: without a club. */
  readonly club: string | null;
  /** `null`: not placed (no valid mark, disqualified, did not start, guest). */
  readonly place: number | null;
}

export interface ScoredRow extends PlacedRow {
  readonly points: Fraction;
}

/**
 * Gives points to the lines of one event's result. Competitors who share a place share, in equal parts, the sum of
 * the points of the places that they cover.
 * `rows`: in the order of the result, best first, equals in the order of competition.
 */
export function scoreRows(rows: readonly PlacedRow[], scoring: Scoring): ScoredRow[] {
  const scorers = scorersOf(rows, scoring.scorersPerClub);
  const holders = rows.filter(
    (row) => row.place !== null && (scoring.nonScorers === 'hold' || scorers.has(row)),
  );
  const points = shareByPlace(holders, scoring.places);
  return rows.map((row) => {
    const share = scorers.has(row) ? points.get(row.place) : undefined;
    return { bib: row.bib, club: row.club, place: row.place, points: share ?? ZERO };
  });
}

/** Who scores: the better placed of each club first, among equals in the order of competition. */
function scorersOf(rows: readonly PlacedRow[], scorersPerClub: number | null): ReadonlySet<PlacedRow> {
  const scorers = new Set<PlacedRow>();
  const countByClub = new Map<string, number>();
  for (const row of rows) {
    if (row.place === null || row.club === null) continue;
    const count = countByClub.get(row.club) ?? 0;
    if (scorersPerClub !== null && count >= scorersPerClub) continue;
    countByClub.set(row.club, count + 1);
    scorers.add(row);
  }
  return scorers;
}

/** The points of one competitor at each place, when these hold the places. */
function shareByPlace(
  holders: readonly PlacedRow[],
  places: readonly Fraction[],
): ReadonlyMap<number | null, Fraction> {
  const sharing = new Map<number | null, number>();
  for (const { place } of holders) sharing.set(place, (sharing.get(place) ?? 0) + 1);
  const shares = new Map<number | null, Fraction>();
  let ahead = 0;
  for (const [place, count] of sharing) {
    const sum = places.slice(ahead, ahead + count).reduce(add, ZERO);
    shares.set(place, divide(sum, fraction(count)));
    ahead += count;
  }
  return shares;
}
