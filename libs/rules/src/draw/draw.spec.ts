import fc from 'fast-check';
import { drawFlights, isAsDrawn, type Draw } from './draw.js';
import type { DrawEntry, DrawTerms } from './draw-terms.js';
import { dealOut } from './equal-strength.js';
import { flightSizes, flightsNeeded } from './flight-sizes.js';
import { compareCodePoints } from './key-order.js';

const SEED = 'Spring Meet 2026, women, discus, final';
const MARKS = [6120, 5811, null, 5811, 4990, 6450, 5302, null];
const EIGHT = MARKS.map((seedMark, at): DrawEntry => ({ key: 'ABCDEFGH'[at]!, seedMark, club: null }));

function drawn(entries: readonly DrawEntry[], terms: Partial<DrawTerms> = {}): Draw {
  const outcome = drawFlights(entries, {
    seed: SEED,
    method: 'lot',
    flights: 1,
    clubmatesApart: false,
    ...terms,
  });
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join(' '));
  return outcome.draw;
}

const flightsOf = ({ flights }: Draw): string[] => flights.map((flight) => flight.join(''));

describe('a draw', () => {
  // Made once more by a program in another language, written from the description of the procedure.
  it.each([
    ['lot', ['DCHEFABG'], ['ABH', 'FGD', 'EC']],
    ['seed marks', ['DCHEFABG'], ['HC', 'EBG', 'DFA']],
    ['equal strength', ['DCHEFABG'], ['CEF', 'GHA', 'DB']],
  ] as const)('by %s is what a second program draws', (method, one, three) => {
    expect(flightsOf(drawn(EIGHT, { method }))).toEqual(one);
    expect(flightsOf(drawn(EIGHT, { method, flights: 3 }))).toEqual(three);
  });

  it('with the best flight last has the best marks there and no marks in the first', () => {
    const [first, , last] = drawn(EIGHT, { method: 'seed marks', flights: 3 }).flights;
    expect(first!.toSorted()).toEqual(['C', 'H']);
    expect(last!.toSorted().slice(0, 1)).toEqual(['A']);
    expect(last).toContain('F');
  });

  it('says everything that keeps it from being made', () => {
    const twice = [EIGHT[0]!, { ...EIGHT[0]!, seedMark: 0 }, { ...EIGHT[1]!, seedMark: 61.2 }];
    const outcome = drawFlights(twice, { seed: 'ü', method: 'lot', flights: 9, clubmatesApart: false });
    expect(outcome).toMatchObject({
      ok: false,
      problems: [
        { field: 'seed', code: 'SEED' },
        { field: 'flights', code: 'FLIGHTS', message: '3 competitors make 1 to 3 flights, not 9.' },
        { field: 'entries', code: 'DUPLICATE', message: '"A" is entered twice. Keep one entry.' },
        { field: 'entries', code: 'MARK' },
      ],
    });
  });

  it('of nobody is one empty flight', () => {
    expect(drawn([]).flights).toEqual([[]]);
  });
});

const anyField = fc
  .array(
    fc.record({
      seedMark: fc.option(fc.integer({ min: 5000, max: 5010 })),
      club: fc.option(fc.constantFrom('N', 'P', 'Q', 'R'), { freq: 4 }),
    }),
    { minLength: 1, maxLength: 26 },
  )
  .map((parts) => parts.map((part, at): DrawEntry => ({ key: `K${at}`, ...part })));

const anyTerms = fc.record({
  seed: fc.string({ minLength: 1, maxLength: 20, unit: 'grapheme-ascii' }),
  method: fc.constantFrom('lot', 'seed marks', 'equal strength'),
  clubmatesApart: fc.boolean(),
});

const anyDraw = fc
  .tuple(anyField, anyTerms, fc.integer({ min: 1, max: 5 }))
  .map(([entries, terms, flights]) => ({
    entries,
    terms: { ...terms, flights: Math.min(flights, entries.length) },
  }));

describe('any draw', () => {
  it('can be repeated, whoever was entered first, and has everybody once in flights of equal size', () => {
    fc.assert(
      fc.property(anyDraw, ({ entries, terms }) => {
        const draw = drawn(entries, terms);
        const sizes = draw.flights.map((flight) => flight.length);
        return (
          drawn(entries.toReversed(), terms).flights.join(' | ') === draw.flights.join(' | ') &&
          isAsDrawn(draw) &&
          draw.flights.flat().toSorted().join() ===
            entries
              .map(({ key }) => key)
              .toSorted()
              .join() &&
          Math.max(...sizes) - Math.min(...sizes) <= 1
        );
      }),
      { numRuns: 20_000 },
    );
  });

  it('is found out when two have changed places', () => {
    const changed = (draw: Draw): Draw => ({
      ...draw,
      flights: draw.flights.map((flight) => flight.toReversed()),
    });
    expect(isAsDrawn(changed(drawn(EIGHT)))).toBe(false);
    expect(isAsDrawn({ ...drawn(EIGHT), flights: [] })).toBe(false);
  });

  it('by seed marks has nobody in a flight before a weaker one', () => {
    fc.assert(
      fc.property(anyDraw, ({ entries, terms }) => {
        const { flights } = drawn(entries, { ...terms, method: 'seed marks' });
        const markOf = new Map(entries.map(({ key, seedMark }) => [key, seedMark ?? 0]));
        const marks = flights.map((flight) => flight.map((key) => markOf.get(key)!));
        return marks.slice(1).every((flight, at) => Math.min(...flight) >= Math.max(...marks[at]!));
      }),
      { numRuns: 20_000 },
    );
  });
});

const clubs = fc.array(fc.option(fc.constantFrom('N', 'P', 'Q', 'R', 'S'), { freq: 5 }), { maxLength: 40 });

function areTiersApart(dealt: readonly number[], groups: number): boolean {
  return dealt.every((group, rank) => {
    const tier = dealt.slice(rank - (rank % groups), rank);
    return group >= 0 && group < groups && !tier.includes(group);
  });
}

const clubsOf = (ranking: readonly (string | null)[]): string[] => [
  ...new Set(ranking.filter((club) => club !== null)),
];

function isSpread(
  club: string,
  ranking: readonly unknown[],
  dealt: readonly number[],
  groups: number,
): boolean {
  const counts = Array.from({ length: groups }, () => 0);
  ranking.forEach((one, rank) => one === club && counts[dealt[rank]!]!++);
  return Math.max(...counts) - Math.min(...counts) <= 1;
}

describe('dealing out', () => {
  it('goes forwards and backwards in turn while no clubs meet', () => {
    expect(dealOut(new Array<null>(8).fill(null), 3)).toEqual([0, 1, 2, 2, 1, 0, 0, 1]);
    expect(dealOut(['N', null, null, 'N'], 2)).toEqual([0, 1, 0, 1]);
  });

  it('keeps tiers in different groups and spreads each club evenly, always', () => {
    fc.assert(
      fc.property(clubs, fc.integer({ min: 1, max: 6 }), (ranking, groups) => {
        const dealt = dealOut(ranking, groups);
        return (
          areTiersApart(dealt, groups) &&
          clubsOf(ranking).every((club) => isSpread(club, ranking, dealt, groups))
        );
      }),
      { numRuns: 20_000 },
    );
  });
});

describe('flights', () => {
  // NFHS: 4 to 12 in a flight (an officiating page on throwing events, tphstrack.com).
  it.each([
    [3, 1],
    [12, 1],
    [13, 2],
    [25, 3],
  ])('%i under NFHS are %i', (competitors, flights) => {
    expect(flightsNeeded(competitors, { min: 4, max: 12 })).toBe(flights);
  });

  it('cannot always be of the size wanted', () => {
    expect(flightsNeeded(13, { min: 7, max: 12 })).toBeNull();
    expect(flightsNeeded(40, null)).toBe(1);
    expect(flightsNeeded(0, { min: 4, max: 12 })).toBe(1);
  });

  it('are larger at the end', () => {
    expect(flightSizes(14, 4)).toEqual([3, 3, 4, 4]);
  });
});

describe('the order of keys', () => {
  it('is by code point', () => {
    expect(['\u{1f600}', '\uff5e', 'b', 'a1', 'a'].sort(compareCodePoints)).toEqual([
      'a',
      'a1',
      'b',
      '\uff5e',
      '\u{1f600}',
    ]);
  });
});
