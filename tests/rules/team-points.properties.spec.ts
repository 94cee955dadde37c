import fc from 'fast-check';
import { formatPoints, parsePlacePoints, rankClubs, scoreRows, type PlacedRow, type Scoring } from '#rules';
import { clubTable, pointsOf, type Scored } from '../reference/team-points.js';
import { fractionText } from '../reference/fractions.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

/** Clubs by the sizes of the groups that share a place, then those without a place. */
const result = fc
  .tuple(
    fc.array(fc.array(fc.constantFrom('A', 'B', 'C', 'D', ''), { minLength: 1, maxLength: 4 }), {
      maxLength: 5,
    }),
    fc.array(fc.constantFrom('A', 'E', ''), { maxLength: 2 }),
  )
  .map(([groups, unplaced]): Scored[] => {
    const list: Scored[] = [];
    for (const group of groups) {
      const place = list.length + 1;
      for (const club of group) list.push({ club, place });
    }
    return [...list, ...unplaced.map((club) => ({ club, place: null }))];
  });

/** Few different values, so that clubs are often level. */
const scoring = fc.record({
  places: fc.array(fc.constantFrom(0, 1, 2, 3, 7.5, 0.125), { maxLength: 8 }),
  scorersPerClub: fc.option(fc.integer({ min: 1, max: 3 })),
  nonScorers: fc.constantFrom('out' as const, 'hold' as const),
});

const rowsOf = (list: readonly Scored[]): PlacedRow[] =>
  list.map(({ club, place }, at) => ({ bib: String(at), club: club === '' ? null : club, place }));

function ours({ places, ...rest }: typeof scoring extends fc.Arbitrary<infer S> ? S : never): Scoring {
  return { ...rest, places: places.map((points) => parsePlacePoints(String(points))!) };
}

describe('the points of teams', () => {
  it('are those of a slow count by another hand, with ties broken and with ties left', () => {
    let level = 0;
    let broken = 0;
    fc.assert(
      fc.property(fc.array(result, { maxLength: 3 }), scoring, fc.boolean(), (results, how, leaveTies) => {
        const slow = results.map((list) => pointsOf(list, how));
        const scored = results.map((list) => scoreRows(rowsOf(list), ours(how)));
        expect(scored.map((rows) => rows.map(({ points }) => formatPoints(points)))).toEqual(
          slow.map((points) => points.map(fractionText)),
        );
        const clubs = rankClubs(scored, leaveTies ? 'shared' : 'places');
        expect(clubs.map(({ club, points, place }) => ({ club, points, place }))).toEqual(
          clubTable(results, slow, leaveTies),
        );
        for (const { tie, points } of clubs) {
          const asMany = clubs.filter((other) => other.points === points).length;
          expect(tie !== null).toBe(asMany > 1);
          if (tie?.isShared) level++;
          else if (tie) broken++;
        }
      }),
      { numRuns: PROPERTY_RUNS },
    );
    expect(level).toBeGreaterThan(PROPERTY_RUNS / 10);
    expect(broken).toBeGreaterThan(PROPERTY_RUNS / 10);
  });

  it('share exactly what the covered places are worth', () => {
    fc.assert(
      fc.property(result, scoring, (list, how) => {
        const everybody = { ...how, scorersPerClub: null, nonScorers: 'hold' as const };
        const clubs = list.map((one, at) => ({ ...one, club: `club ${at}` }));
        const scored = scoreRows(rowsOf(clubs), ours(everybody));
        // In twelve thousandths, which are whole: at most four share, and points have at most three decimals.
        const whole = (points: { numerator: bigint; denominator: bigint }): bigint =>
          (points.numerator * 12_000n) / points.denominator;
        const placed = list.filter(({ place }) => place !== null).length;
        const covered = how.places
          .slice(0, placed)
          .reduce((sum, points) => sum + BigInt(Math.round(points * 12_000)), 0n);
        expect(scored.reduce((sum, { points }) => sum + whole(points), 0n)).toBe(covered);
      }),
      { numRuns: PROPERTY_RUNS },
    );
  });
});
