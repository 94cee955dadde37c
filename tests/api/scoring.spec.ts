import { startApi, type TestApi } from '../support/api.js';
import {
  attemptOf,
  enterInJournal,
  staffedCompetition,
  staffedMeet,
  type StaffedMeet,
} from '../support/circle.js';

const SET = `mutation ($input: MeetScoringSetInput!) { meetScoringSet(input: $input) {
  scoring {
    revision preset teams scorersPerClub relaysPerClub nonScorers clubTies
    individual { places source isConfirmed note } relay { places source isConfirmed }
    divisions { name sex ages }
  }
  userErrors { code path message remedy }
} }`;

const TABLE = `query ($id: ID!) { meet(id: $id) { scoring { revision } clubTable {
  teams isProvisional scoring { revision preset }
  openCompetitions { id }
  combined { place club points reason }
  divisions { name clubs { place club points reason } }
  competitions { competition { id } isProvisional lines { bib club place points } }
} } }`;

const CLUBS = ['Heron', 'Otter', 'Heron', 'Lynx'];

/** A discus final of four from three clubs; the last one is a guest of a fourth. */
function sheetOf(changes: object = {}): object {
  const competitors = [...CLUBS, 'Stoat'].map((club, at) => ({
    bib: String(at + 1),
    club,
    ...(club === 'Stoat' && { guest: true }),
  }));
  return { format: 'sectorline-sheet/1', rules: 'WA', event: 'discus', competitors, ...changes };
}

describe('the points of clubs', () => {
  let api: TestApi;
  let meet: StaffedMeet;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());
  beforeEach(async () => {
    meet = await staffedMeet(api);
  });

  async function score(input: object, token = meet.director): Promise<any> {
    const answer = await api.data(SET, { input: { meetId: meet.id, ...input } }, token);
    return answer.meetScoringSet;
  }

  async function tableOf(token: string | null = null): Promise<any> {
    const answer = await api.data(TABLE, { id: meet.id }, token);
    return answer.meet.clubTable;
  }

  const shown = (clubs: any[]): string[] =>
    clubs.map(({ place, club, points }) => `${place} ${club} ${points}`);

  /** The competitors throw in turn, round one. Gives the version after it. */
  async function throwOnce(competition: Awaited<ReturnType<typeof staffedCompetition>>, ...cells: string[]) {
    let version = 0;
    for (const [at, cell] of cells.entries()) {
      const {
        entry,
        userErrors,
        competition: after,
      } = await enterInJournal(api, competition.official, 'attemptRecord', {
        competitionId: competition.id,
        competitorId: competition.competitors[String(at + 1)],
        round: 1,
        ...attemptOf(cell),
      });
      expect([entry?.standing, userErrors]).toEqual(['ACCEPTED', []]);
      version = after.version;
    }
    return version;
  }

  it('are nothing before the meet is scored', async () => {
    expect(await tableOf()).toBeNull();
  });

  it('go by a preset, which names its source', async () => {
    const set = await score({ preset: 'TRIANGULAR', scorersPerClub: 2 });
    expect(set).toEqual({
      scoring: expect.objectContaining({
        revision: 1,
        preset: 'TRIANGULAR',
        teams: null,
        scorersPerClub: 2,
        relaysPerClub: null,
        nonScorers: 'OUT',
        clubTies: 'PLACES',
        individual: expect.objectContaining({ places: ['5', '3', '1'], isConfirmed: true }) as object,
        relay: expect.objectContaining({ places: ['5', '3'], isConfirmed: false }) as object,
        divisions: [],
      }) as object,
      userErrors: [],
    });
    expect((await score({ preset: 'BY_TEAMS' })).scoring).toMatchObject({
      revision: 2,
      individual: { places: null, isConfirmed: true },
    });
    expect((await api.data(TABLE, { id: meet.id })).meet.scoring).toEqual({ revision: 2 });
  });

  it('follow every throw, and say what is not signed off', async () => {
    const discus = await staffedCompetition(api, meet, sheetOf());
    await score({ preset: 'DUAL' });
    expect(shown((await tableOf()).combined)).toEqual(['1 Heron 0', '1 Lynx 0', '1 Otter 0']);
    const version = await throwOnce(discus, '41.00', '40.00', '42.00');
    const table = await tableOf();
    expect(table).toMatchObject({ teams: 3, isProvisional: true, openCompetitions: [{ id: discus.id }] });
    expect(shown(table.combined)).toEqual(['1 Heron 8', '2 Otter 1', '3 Lynx 0']);
    expect(table.competitions).toEqual([
      {
        competition: { id: discus.id },
        isProvisional: true,
        lines: [
          { bib: '3', club: 'Heron', place: 1, points: '5' },
          { bib: '1', club: 'Heron', place: 2, points: '3' },
          { bib: '2', club: 'Otter', place: 3, points: '1' },
          { bib: '4', club: 'Lynx', place: null, points: '0' },
          { bib: '5', club: null, place: null, points: '0' },
        ],
      },
    ]);
    await enterInJournal(api, meet.referee, 'competitionSignOff', {
      competitionId: discus.id,
      expectedVersion: version,
      incomplete: 'lightning',
    });
    expect(await tableOf()).toMatchObject({ isProvisional: false, openCompetitions: [] });
  });

  it('are shared exactly, by divisions and together, and a qualification gives none', async () => {
    const competitionOf = (changes: object) => staffedCompetition(api, meet, sheetOf(changes));
    const women = await competitionOf({ category: { sex: 'W', age: 'U18' } });
    const men = await competitionOf({ category: { sex: 'M' } });
    await competitionOf({ stage: 'qualification', qualifying: { standard: '50.00', fill: 2 } });
    const divisions = [
      { name: 'Women', sex: 'W' },
      { name: 'Juniors', ages: ['U18'] },
      { name: 'Men', sex: 'M' },
    ];
    await score({ places: { individual: ['5', '3', '1.5'], relay: [] }, divisions });
    await throwOnce(women, '40.00', '41.00', '40.00', '40.00');
    await throwOnce(men, 'X', '41.00', '40.00');
    const table = await tableOf();
    expect(table.competitions).toHaveLength(2);
    const tables = Object.fromEntries(table.divisions.map((one: any) => [one.name, shown(one.clubs)]));
    expect(tables).toEqual({
      Women: ['1 Otter 5', '2 Heron 3', '3 Lynx 1.5'],
      Juniors: tables.Women,
      Men: ['1 Otter 5', '2 Heron 3', '3 Lynx 0'],
    });
    expect(shown(table.combined)).toEqual(['1 Otter 10', '2 Heron 6', '3 Lynx 1.5']);
  });

  it.each([
    ['DUAL', '5-3-1', '5-0'],
    ['TRIANGULAR', '5-3-1', '5-3'],
    ['QUADRANGULAR', '6-4-3-2-1', '6-4-2'],
    ['SIX_PLACES', '10-8-6-4-2-1', '10-8-6-4-2-1'],
    ['EIGHT_PLACES', '10-8-6-5-4-3-2-1', '10-8-6-5-4-3-2-1'],
  ])('of the preset %s are %s, of relays %s', async (preset, individual, relay) => {
    // Sources: libs/rules/src/scoring/presets.spec.ts.
    const { scoring } = await score({ preset });
    expect([scoring.individual.places.join('-'), scoring.relay.places.join('-')]).toEqual([
      individual,
      relay,
    ]);
  });

  it('go to so many of a club; the others are displaced, or hold their places', async () => {
    const discus = await staffedCompetition(api, meet, sheetOf());
    await throwOnce(discus, '41.00', '40.00', '42.00', '39.00', '45.00');
    const clubsBy = async (nonScorers: string): Promise<string[]> => {
      await score({ preset: 'DUAL', scorersPerClub: 1, nonScorers });
      return shown((await tableOf()).combined);
    };
    expect(await clubsBy('OUT')).toEqual(['1 Heron 5', '2 Otter 3', '3 Lynx 1']);
    expect(await clubsBy('HOLD')).toEqual(['1 Heron 5', '2 Otter 1', '3 Lynx 0']);
  });

  it('leave clubs tied or break the tie, and say so', async () => {
    const discus = await staffedCompetition(api, meet, sheetOf());
    await throwOnce(discus, '41.00', '42.00', '40.00');
    const own = { individual: ['3', '2', '1'], relay: [] };
    const clubsBy = async (clubTies: string): Promise<unknown[]> => {
      await score({ places: own, clubTies });
      const { combined } = await tableOf();
      return combined.map(({ place, club, points, reason }: any) => [place, club, points, reason]);
    };
    expect(await clubsBy('PLACES')).toEqual([
      [1, 'Otter', '3', 'tied; more first places'],
      [2, 'Heron', '3', 'tied; fewer first places'],
      [3, 'Lynx', '0', null],
    ]);
    expect(await clubsBy('SHARED')).toEqual([
      [1, 'Heron', '3', 'tied; place shared'],
      [1, 'Otter', '3', 'tied; place shared'],
      [3, 'Lynx', '0', null],
    ]);
  });

  it.each([
    ['no points', {}, 'POINTS_MISSING', ['input', 'preset']],
    [
      'points twice',
      { preset: 'DUAL', places: { individual: [], relay: [] } },
      'POINTS_TWICE',
      ['input', 'places'],
    ],
    [
      'two divisions of one name',
      { preset: 'DUAL', divisions: [{ name: 'Women' }, { name: 'Women', sex: 'W' }] },
      'DIVISION_TWICE',
      ['input', 'divisions', '1', 'name'],
    ],
  ])('are refused with %s', async (_what, input, code, path) => {
    expect(await score(input)).toMatchObject({ scoring: null, userErrors: [{ code, path }] });
    expect(await tableOf()).toBeNull();
  });

  it('are set by the director of the meet alone', async () => {
    const { id } = meet;
    const other = await staffedMeet(api);
    for (const token of [meet.referee, other.director, null]) {
      const { errors } = await api.send(SET, { input: { meetId: id, preset: 'DUAL' } }, token);
      expect(errors?.[0]?.extensions.code).toBe(token === null ? 'UNAUTHENTICATED' : 'FORBIDDEN');
    }
  });

  it('are refused by name for what no match has', async () => {
    const { errors } = await api.send(
      SET,
      { input: { meetId: meet.id, preset: 'DUAL', teams: 0, scorersPerClub: -1 } },
      meet.director,
    );
    expect(errors?.[0]?.extensions.code).toBe('BAD_USER_INPUT');
  });
});
