import fc from 'fast-check';
import { parsePlacePoints } from './scoring.js';
import { SCORING_PRESETS } from './presets.js';
import { scoreMatch, type Division, type MatchEvent, type MatchScoring } from './match.js';
import type { PlacedRow } from './shared-points.js';

const PLAIN: MatchScoring = {
  places: 'dual',
  teams: null,
  scorersPerClub: null,
  relaysPerClub: null,
  nonScorers: 'out',
  ties: 'places',
  divisions: [],
};

/** `1N 2P 2N -N 3.`: places with the club's letter; `-` not placed, `.` without a club. */
function event(words: string, parts: Partial<MatchEvent> = {}): MatchEvent {
  const rows: PlacedRow[] = words.split(' ').map((word, at) => {
    const club = word.slice(-1);
    const place = word.slice(0, -1);
    return { bib: `${at}`, club: club === '.' ? null : club, place: place === '-' ? null : Number(place) };
  });
  return { isRelay: false, sex: 'W', age: null, rows, ...parts };
}

const division = (name: string, parts: Partial<Division> = {}): Division => ({
  name,
  sex: null,
  ages: [],
  ...parts,
});

const shown = (clubs: readonly { place: number; club: string; points: string }[]): string[] =>
  clubs.map(({ place, club, points }) => `${place} ${club} ${points}`);

describe('a match', () => {
  it('gives relays their own points', () => {
    // 5-3-1 and 5-0: sites.google.com/view/srhstrack/track-101.
    const { combined } = scoreMatch([event('1N 2S 3N'), event('1S 2N', { isRelay: true })], PLAIN);
    expect(shown(combined)).toEqual(['1 S 8', '2 N 6']);
  });

  it('limits scorers and relay teams apart', () => {
    const events = [event('1N 2N 3N 4S'), event('1N 2N 3S', { isRelay: true })];
    const limited = { ...PLAIN, places: 'six-places', scorersPerClub: 2, relaysPerClub: 1 } as const;
    expect(shown(scoreMatch(events, limited).combined)).toEqual(['1 N 28', '2 S 14']);
  });

  it('goes by the teams of the whole match, whoever is in an event', () => {
    const events = [event('1A 2B 3. -C'), event('1D 2A')];
    const byTeams = { ...PLAIN, places: 'by-teams' } as const;
    expect(scoreMatch(events, byTeams).teams).toBe(4);
    expect(shown(scoreMatch(events, byTeams).combined)).toEqual(['1 A 7', '2 D 4', '3 B 3', '4 C 0']);
    expect(shown(scoreMatch(events, { ...byTeams, teams: 6 }).combined)[0]).toBe('1 A 11');
  });

  it('has a table for each division and counts an event once for the combined trophy', () => {
    const events = [
      event('1A 2B', { sex: 'W', age: 'U18' }),
      event('1B 2A', { sex: 'M', age: 'U18' }),
      event('1B', { sex: 'M', age: 'senior' }),
      event('1A', { sex: 'X', age: null }),
    ];
    const divisions = [
      division('women', { sex: 'W' }),
      division('juniors', { ages: ['U18', 'U20'] }),
      division('men', { sex: 'M', ages: ['senior'] }),
    ];
    const match = scoreMatch(events, { ...PLAIN, divisions });
    expect(match.divisions.map(({ clubs }) => shown(clubs))).toEqual([
      ['1 A 5', '2 B 3'],
      ['1 A 8', '1 B 8'],
      ['1 B 5'],
    ]);
    expect(shown(match.combined)).toEqual(['1 B 13', '2 A 8']);
  });
});

/* Brute force: the points of one row counted from what is written about it, in sixtieths. */

const SIXTIETHS = 60;

function slowClubs(events: readonly MatchEvent[], scoring: MatchScoring): Map<string, number> {
  const names = new Set(events.flatMap(({ rows }) => rows.flatMap(({ club }) => club ?? [])));
  const totals = new Map([...names].map((name) => [name, 0]));
  for (const { rows, isRelay } of events) {
    const limit = (isRelay ? scoring.relaysPerClub : scoring.scorersPerClub) ?? 99;
    const isScorer = rows.map(
      ({ club, place }, at) =>
        club !== null &&
        place !== null &&
        rows.slice(0, at).filter((one) => one.club === club && one.place !== null).length < limit,
    );
    const holds = rows.map(({ place }, at) =>
      scoring.nonScorers === 'hold' ? place !== null : isScorer[at],
    );
    rows.forEach(({ club, place }, at) => {
      if (!isScorer[at] || club === null) return;
      const ahead = rows.filter((one, other) => holds[other] && one.place! < place!).length;
      const level = rows.filter((one, other) => holds[other] && one.place === place).length;
      let sum = 0;
      for (let covered = ahead + 1; covered <= ahead + level; covered += 1)
        sum += worthOf(scoring, isRelay, covered, names.size);
      totals.set(club, totals.get(club)! + (sum * SIXTIETHS) / level);
    });
  }
  return totals;
}

function worthOf({ places }: MatchScoring, isRelay: boolean, place: number, teams: number): number {
  if (places === 'by-teams') return Math.max(0, teams + 1 - place);
  if (typeof places === 'string') {
    const { points } = SCORING_PRESETS[places][isRelay ? 'relay' : 'individual'];
    return (points as readonly number[])[place - 1] ?? 0;
  }
  return Number(places[isRelay ? 'relay' : 'individual'][place - 1]?.numerator ?? 0n);
}

/** Whole sixtieths: with at most six level, every share is. */
function sixtieths(points: string): number {
  const [numerator, denominator] = points.split('/');
  return denominator === undefined
    ? Math.round(Number(points) * SIXTIETHS)
    : (Number(numerator) * SIXTIETHS) / Number(denominator);
}

const anyEvent = fc
  .record({
    groups: fc.array(fc.array(fc.constantFrom('A', 'B', 'C', 'D', null), { minLength: 1, maxLength: 6 }), {
      maxLength: 4,
    }),
    unplaced: fc.array(fc.constantFrom('A', 'E'), { maxLength: 2 }),
    isRelay: fc.boolean(),
    sex: fc.constantFrom('W', 'M', null),
    age: fc.constantFrom('U18', 'senior', null),
  })
  .map(({ groups, unplaced, ...parts }): MatchEvent => {
    const rows: PlacedRow[] = [];
    for (const group of groups) {
      const place = rows.length + 1;
      for (const club of group) rows.push({ bib: `${rows.length}`, club, place });
    }
    return { ...parts, rows: [...rows, ...unplaced.map((club) => ({ bib: 'u', club, place: null }))] };
  });

const OWN = ['7', '4', '1'].flatMap((text) => parsePlacePoints(text) ?? []);

const anyScoring: fc.Arbitrary<MatchScoring> = fc.record({
  places: fc.constantFrom<MatchScoring['places']>(
    'dual',
    'triangular',
    'quadrangular',
    'six-places',
    'eight-places',
    'by-teams',
    { individual: OWN, relay: OWN.slice(1) },
  ),
  teams: fc.constant(null),
  scorersPerClub: fc.option(fc.integer({ min: 1, max: 3 })),
  relaysPerClub: fc.option(fc.integer({ min: 1, max: 2 })),
  nonScorers: fc.constantFrom('out', 'hold'),
  ties: fc.constantFrom('places', 'shared'),
  divisions: fc.constantFrom<readonly Division[]>(
    [],
    [division('women', { sex: 'W' }), division('juniors', { ages: ['U18'] })],
  ),
});

describe('20,000 matches', () => {
  it('give every club what a slow count gives it, division by division', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 4 }), anyScoring, (events, scoring) => {
        const match = scoreMatch(events, scoring);
        const teams = match.teams;
        const fits = ({ sex, ages }: Division, one: MatchEvent): boolean =>
          (sex === null || sex === one.sex) && (ages.length === 0 || ages.some((age) => age === one.age));
        const tables = [
          ...match.divisions.map(({ division: of, clubs }) => ({ of: [of], clubs })),
          { of: scoring.divisions, clubs: match.combined },
        ];
        for (const { of, clubs } of tables) {
          const its = events.filter((one) => of.length === 0 || of.some((each) => fits(each, one)));
          // The match as a whole says how many teams there are, so empty events carry the clubs of the others.
          const others = { ...event('-A'), rows: events.flatMap(({ rows }) => rows) };
          const unplaced = { ...others, rows: others.rows.map((row) => ({ ...row, place: null })) };
          const slow = slowClubs([...its, unplaced], scoring);
          expect(new Set([...slow.keys()]).size).toBe(teams);
          const listed = new Set(its.flatMap(({ rows }) => rows.flatMap(({ club }) => club ?? [])));
          expect(new Map(clubs.map(({ club, points }) => [club, sixtieths(points)]))).toEqual(
            new Map([...slow].filter(([club]) => listed.has(club))),
          );
        }
      }),
      { numRuns: 20_000 },
    );
  });

  it('do not depend on the order of events', () => {
    const turned = fc
      .array(anyEvent, { maxLength: 4 })
      .chain((events) =>
        fc.tuple(
          fc.constant(events),
          fc.shuffledSubarray(events, { minLength: events.length, maxLength: events.length }),
        ),
      );
    fc.assert(
      fc.property(turned, anyScoring, ([events, shuffled], scoring) => {
        const [one, other] = [scoreMatch(events, scoring), scoreMatch(shuffled, scoring)];
        expect(other.combined).toEqual(one.combined);
        expect(other.divisions).toEqual(one.divisions);
      }),
      { numRuns: 20_000 },
    );
  });
});
