import fc from 'fast-check';
import { add, compare, formatPoints, ZERO, type Fraction } from '../quantities/fraction.js';
import { parsePlacePoints, type Scoring } from './scoring.js';
import { scoreRows, type PlacedRow } from './shared-points.js';

function scoring(places: string, parts: Partial<Scoring> = {}): Scoring {
  const points = places.split('-').flatMap((text) => parsePlacePoints(text) ?? []);
  return { places: points, scorersPerClub: null, nonScorers: 'out', ...parts };
}

/** `1N 2P 2N 4.`: places with the first letter of the club, `.` without one, `-N` not placed. */
function rows(words: string): PlacedRow[] {
  return words.split(' ').map((word, index) => {
    const [club, place] = [word.slice(-1), word.slice(0, -1)];
    return { bib: `${index}`, club: club === '.' ? null : club, place: place === '-' ? null : Number(place) };
  });
}

function points(words: string, rules: Scoring): string {
  return scoreRows(rows(words), rules)
    .map((row) => formatPoints(row.points))
    .join(' ');
}

describe('points of a result', () => {
  it.each([
    // High-school dual meet, 5-3-1: sites.google.com/view/srhstrack/track-101, track.isport.com.
    ['a dual meet', '1A 2B 3A 4B', scoring('5-3-1'), '5 3 1 0'],
    // Sixteen teams, two level at third: 14 and 13 shared; the guide to the European team championships of 2025.
    ['two at third of sixteen', '1A 2B 3C 3D 5E', scoring('16-15-14-13-12'), '16 15 13.5 13.5 12'],
    // Invitational of eight places: sites.google.com/view/srhstrack/track-101.
    ['three at first', '1A 1B 1C 4D', scoring('10-8-6-5-4-3-2-1'), '8 8 8 5'],
    // Constructed, common practice.
    [
      'a tie over the last scoring place',
      '1A 2B 3C 4D 5E 6F 6G',
      scoring('10-8-6-4-2-1'),
      '10 8 6 4 2 0.5 0.5',
    ],
    ['thirds', '1A 2B 2C 2D', scoring('5-3-1'), '5 4/3 4/3 4/3'],
    ['no points at all', '1A 2B', scoring(''), '0 0'],
    // No mark, disqualified, not started: none (the same guide).
    ['who is not placed', '1A -B -C', scoring('3-2-1'), '3 0 0'],
    // Both ways exist; constructed.
    ['over the number, out', '1A 2A 3A 4B', scoring('5-3-1', { scorersPerClub: 2 }), '5 3 0 1'],
    [
      'over the number, holding',
      '1A 2A 3A 4B',
      scoring('5-3-1', { scorersPerClub: 2, nonScorers: 'hold' }),
      '5 3 0 0',
    ],
    ['without a club, out', '1. 2A 3B', scoring('5-3-1'), '0 5 3'],
    ['without a club, holding', '1. 2A 3B', scoring('5-3-1', { nonScorers: 'hold' }), '0 3 1'],
    ['a shared place that is held in part', '1A 1. 3B', scoring('5-3-1', { nonScorers: 'hold' }), '4 0 1'],
    ['a shared place that is left to one', '1A 1. 3B', scoring('5-3-1'), '5 0 3'],
    [
      'equals of one club: the first in the order',
      '1A 1A 1B',
      scoring('5-3', { scorersPerClub: 1 }),
      '4 0 4',
    ],
  ])('%s', (_, words, rules, expected) => {
    expect(points(words, rules)).toBe(expected);
  });
});

const anyPlaces = fc
  .array(fc.integer({ min: 0, max: 10_000_000 }), { maxLength: 9 })
  .map((all) => all.flatMap((thousandths) => parsePlacePoints(String(thousandths / 1000)) ?? []));

/** Groups of level competitors, then some who are not placed. */
const anyRows = fc
  .tuple(
    fc.array(fc.array(fc.constantFrom('A', 'B', 'C', null), { minLength: 1, maxLength: 4 }), {
      maxLength: 5,
    }),
    fc.nat(2),
  )
  .map(([groups, unplaced]) => {
    const all: PlacedRow[] = [];
    for (const group of groups) {
      const place = all.length + 1;
      group.forEach((club) => all.push({ bib: `${all.length}`, club, place }));
    }
    const without = Array.from({ length: unplaced }, (_, at) => ({ bib: `n${at}`, club: 'A', place: null }));
    return [...all, ...without];
  });

const anyLimit = fc.option(fc.integer({ min: 1, max: 3 }));

function sum(all: readonly Fraction[]): Fraction {
  return all.reduce(add, ZERO);
}

describe('shared points', () => {
  it('add up exactly to the points of the places that the scorers cover', () => {
    fc.assert(
      fc.property(anyRows, anyPlaces, anyLimit, (all, places, scorersPerClub) => {
        const scored = scoreRows(all, { places, scorersPerClub, nonScorers: 'out' });
        const scorers = ['A', 'B', 'C'].map((club) =>
          Math.min(
            all.filter((row) => row.club === club && row.place !== null).length,
            scorersPerClub ?? Number.MAX_SAFE_INTEGER,
          ),
        );
        const covered = scorers.reduce((total, count) => total + count, 0);
        expect(sum(scored.map((row) => row.points))).toEqual(sum(places.slice(0, covered)));
      }),
      { numRuns: 20_000 },
    );
  });

  it('add up with those that are held to the points of all places that are covered', () => {
    fc.assert(
      fc.property(anyRows, anyPlaces, anyLimit, (all, places, scorersPerClub) => {
        const rules: Scoring = { places, scorersPerClub, nonScorers: 'hold' };
        const scored = scoreRows(all, rules);
        // Everybody in a club of his own takes what his place is worth.
        const worth = scoreRows(
          all.map((row) => ({ ...row, club: row.bib })),
          { ...rules, scorersPerClub: null },
        );
        expect(sum(worth.map((row) => row.points))).toEqual(
          sum(places.slice(0, all.filter((row) => row.place !== null).length)),
        );
        scored.forEach((row, at) => {
          const mayTake = [ZERO, worth[at]?.points ?? ZERO];
          expect(mayTake.some((one) => compare(one, row.points) === 0)).toBe(true);
        });
      }),
      { numRuns: 20_000 },
    );
  });

  it('are equal for equal scorers, and no better for a worse place when the table falls', () => {
    fc.assert(
      fc.property(anyRows, anyPlaces, anyLimit, (all, places, scorersPerClub) => {
        const falling = [...places].sort((a, b) => compare(b, a));
        const scored = scoreRows(all, { places: falling, scorersPerClub, nonScorers: 'out' });
        const takers = scored.filter((row) => compare(row.points, ZERO) > 0);
        takers.slice(1).forEach((row, at) => {
          const before = takers[at];
          const difference = before ? compare(before.points, row.points) : -1;
          expect(before?.place === row.place ? difference === 0 : difference >= 0).toBe(true);
        });
      }),
      { numRuns: 20_000 },
    );
  });
});
