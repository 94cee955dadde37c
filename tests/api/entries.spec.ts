import { startApi, type TestApi } from '../support/api.js';
import { enter, makeMeet, type MadeMeet } from '../support/made-meet.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const START_LIST = `query ($id: ID!) {
  competition(id: $id) { version startList { id bib position displayName club flight isGuest implementGrams } }
}`;
const startList = async (meet: MadeMeet): Promise<any> =>
  (await api.data(START_LIST, { id: meet.competitionId }, meet.director)).competition;

async function makeAthlete(changed: object = {}): Promise<string> {
  const input = {
    givenName: 'Tamsin',
    familyName: 'Ravenmoor',
    sex: 'W',
    birthDate: '1999-02-11',
    ...changed,
  };
  const made = await api.data(
    'mutation ($input: AthleteCreateInput!) { athleteCreate(input: $input) { athlete { id } userErrors { code } } }',
    { input },
    api.adminToken,
  );
  return made.athleteCreate.athlete.id;
}

async function makeClub(name: string): Promise<any> {
  const document =
    'mutation ($input: ClubCreateInput!) { clubCreate(input: $input) { club { id name } userErrors { code path } } }';
  return (await api.data(document, { input: { name } }, api.adminToken)).clubCreate;
}

describe('Entering a competitor', () => {
  it('puts an athlete or a listed name at the end of the start list, as a new version', async () => {
    const meet = await makeMeet(api);
    const { club } = await makeClub('Heronsgate Harriers');
    const athleteId = await makeAthlete();
    const first = await enter(api, meet, {
      athleteId,
      listedName: null,
      bib: '7',
      clubId: club.id,
      flight: 'A',
    });
    const second = await enter(api, meet, {
      listedName: 'Bo Lindqvist',
      bib: '12',
      listedClub: 'Marsh AC',
      isGuest: true,
    });
    expect([first.userErrors, second.userErrors]).toEqual([[], []]);
    expect([first.competition.version, second.competition.version]).toEqual([1, 2]);
    expect(await startList(meet)).toMatchObject({
      version: 2,
      startList: [
        {
          bib: '7',
          position: 1,
          displayName: 'Tamsin Ravenmoor',
          club: 'Heronsgate Harriers',
          flight: 'A',
          isGuest: false,
        },
        { bib: '12', position: 2, displayName: 'B. L.', club: 'Marsh AC', flight: null, isGuest: true },
      ],
    });
  });

  it('answers what does not fit with user errors and changes nothing', async () => {
    const meet = await makeMeet(api);
    const athleteId = await makeAthlete();
    await enter(api, meet, { athleteId, listedName: null, bib: '1' });
    const unknown = (kind: string): string =>
      Buffer.from(`${kind}:01997f00-0000-7000-8000-00000000dead`).toString('base64url');
    for (const [input, code, field] of [
      [{ bib: '1' }, 'BIB_TAKEN', 'bib'],
      [{ athleteId, listedName: null, bib: '2' }, 'ALREADY_ENTERED', 'athleteId'],
      [{ athleteId, bib: '2' }, 'ATHLETE_OR_NAME', 'athleteId'],
      [{ listedName: null, bib: '2' }, 'ATHLETE_OR_NAME', 'athleteId'],
      [{ bib: '2', clubId: unknown('Club'), listedClub: 'x' }, 'ONE_CLUB', 'listedClub'],
      [{ bib: '2', clubId: unknown('Club') }, 'NOT_FOUND', 'clubId'],
      [{ bib: '2', athleteId: unknown('Athlete'), listedName: null }, 'NOT_FOUND', 'athleteId'],
      [{ bib: '2', competitionId: unknown('Competition') }, 'NOT_FOUND', 'competitionId'],
    ] as const) {
      const { competitor, userErrors } = await enter(api, meet, input);
      expect([competitor, userErrors[0]?.code, userErrors[0]?.path]).toEqual([null, code, ['input', field]]);
      expect(userErrors[0].remedy).not.toBe('');
    }
    expect(await startList(meet)).toMatchObject({ version: 1, startList: [{ bib: '1' }] });
  });

  it('twice under one id is one entry', async () => {
    const meet = await makeMeet(api);
    const entry = { id: '01997f00-0000-7000-8000-0000000000e1', bib: '5' };
    const first = await enter(api, meet, entry);
    const again = await enter(api, meet, entry);
    expect([first.isReplay, again.isReplay]).toEqual([false, true]);
    expect(again.competitor).toEqual(first.competitor);
    expect(await startList(meet)).toMatchObject({ version: 1, startList: [{ bib: '5' }] });
  });

  it('by twenty at once keeps positions without a gap and bibs apart', async () => {
    const meet = await makeMeet(api);
    const bibs = Array.from({ length: 20 }, (_, index) => String(index % 10));
    const entered = await Promise.all(bibs.map((bib) => enter(api, meet, { bib })));
    expect(entered.filter(({ userErrors }) => userErrors.length === 0)).toHaveLength(10);
    expect(entered.flatMap(({ userErrors }) => userErrors.map(({ code }: any) => code))).toEqual(
      Array(10).fill('BIB_TAKEN'),
    );
    const { version, startList: list } = await startList(meet);
    expect(version).toBe(10);
    expect(list.map(({ position }: any) => position)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  it('is for the director of the meet', async () => {
    const meet = await makeMeet(api);
    const other = await makeMeet(api);
    const input = { competitionId: meet.competitionId, listedName: 'A B', bib: '1' };
    for (const token of [
      other.director,
      await api.token('referee', meet.meetId),
      await api.token('official', meet.competitionId),
    ]) {
      const { errors } = await api.send(
        'mutation ($input: CompetitorEnterInput!) { competitorEnter(input: $input) { isReplay } }',
        { input },
        token,
      );
      expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    }
    expect(await startList(meet)).toMatchObject({ version: 0, startList: [] });
  });
});

describe('The order of competition', () => {
  const ORDER = `mutation ($input: StartOrderSetInput!) {
    startOrderSet(input: $input) {
      competition { version startList { bib flight } }
      userErrors { __typename code ... on VersionConflict { currentVersion } }
    }
  }`;
  const WITHDRAW = `mutation ($input: CompetitorWithdrawInput!) {
    competitorWithdraw(input: $input) { competition { version startList { bib position } } userErrors { code } }
  }`;

  async function threeEntered(): Promise<{ meet: MadeMeet; ids: string[] }> {
    const meet = await makeMeet(api);
    const ids: string[] = [];
    for (const bib of ['1', '2', '3']) ids.push((await enter(api, meet, { bib })).competitor.id);
    return { meet, ids };
  }

  const setOrder = async (meet: MadeMeet, expectedVersion: number, lines: object[]): Promise<any> =>
    (
      await api.data(
        ORDER,
        { input: { competitionId: meet.competitionId, expectedVersion, lines } },
        meet.director,
      )
    ).startOrderSet;
  const withdraw = async (meet: MadeMeet, competitorId: string): Promise<any> =>
    (await api.data(WITHDRAW, { input: { competitorId } }, meet.director)).competitorWithdraw;

  it('can be set whole, with flights', async () => {
    const { meet, ids } = await threeEntered();
    const [a, b, c] = ids;
    const { competition, userErrors } = await setOrder(meet, 3, [
      { competitorId: c, flight: 'A' },
      { competitorId: a },
      { competitorId: b, flight: null },
    ]);
    expect([competition, userErrors]).toEqual([
      {
        version: 4,
        startList: [
          { bib: '3', flight: 'A' },
          { bib: '1', flight: null },
          { bib: '2', flight: null },
        ],
      },
      [],
    ]);
  });

  it('is refused when it is made from an older version, or is not whole', async () => {
    const { meet, ids } = await threeEntered();
    const lines = ids.map((competitorId) => ({ competitorId }));
    const other = await makeMeet(api);
    const foreign = (await enter(api, other, { bib: '1' })).competitor.id;
    expect((await setOrder(meet, 2, lines)).userErrors).toEqual([
      { __typename: 'VersionConflict', code: 'VERSION_CONFLICT', currentVersion: 3 },
    ]);
    for (const wrong of [
      lines.slice(1),
      [...lines, lines[0]],
      [lines[0], lines[0], lines[1]],
      [...lines.slice(1), { competitorId: foreign }],
      [],
    ]) {
      const { competition, userErrors } = await setOrder(meet, 3, wrong as object[]);
      expect([competition, userErrors]).toEqual([
        null,
        [{ __typename: 'Refusal', code: 'ORDER_INCOMPLETE' }],
      ]);
    }
    expect(await startList(meet)).toMatchObject({ version: 3 });
  });

  it('closes up when somebody withdraws', async () => {
    const { meet, ids } = await threeEntered();
    const { competition, userErrors } = await withdraw(meet, ids[0] ?? '');
    expect([competition, userErrors]).toEqual([
      {
        version: 4,
        startList: [
          { bib: '2', position: 1 },
          { bib: '3', position: 2 },
        ],
      },
      [],
    ]);
    expect((await withdraw(meet, ids[0] ?? '')).userErrors).toEqual([{ code: 'NOT_FOUND' }]);
  });
});

describe('Names', () => {
  const NAMES = 'query ($id: ID!) { competition(id: $id) { startList { displayName } } }';
  const CALLED =
    'query ($id: ID!) { competition(id: $id) { callList { name competitor { bib displayName } } } }';
  const UPDATE =
    'mutation ($input: AthleteUpdateInput!) { athleteUpdate(input: $input) { athlete { familyName birthDate } userErrors { code } } }';

  async function published(minorsDisplay: string): Promise<MadeMeet> {
    const meet = await makeMeet(api, { startsOn: '2026-05-30', minorsDisplay });
    await api.data(
      'mutation ($input: MeetPublishInput!) { meetPublish(input: $input) { userErrors { code } } }',
      { input: { meetId: meet.meetId } },
      meet.director,
    );
    return meet;
  }

  const shown = async (meet: MadeMeet): Promise<string[]> =>
    (await api.data(NAMES, { id: meet.competitionId })).competition.startList.map(
      (line: any) => line.displayName,
    );

  it.each([
    ['FULL', ['Ada Adult', 'Cleo Child', 'Uma Unknown', 'I. B.', 'Ludo van Listed']],
    ['INITIALS', ['Ada Adult', 'C. C.', 'U. U.', 'I. B.', 'L. L.']],
    ['BIB', ['Ada Adult', '#2', '#3', 'I. B.', '#5']],
  ])(
    'of children and of those whose age is not known are shown as the meet decides: %s',
    async (display, names) => {
      const meet = await published(display);
      const athletes = [
        { givenName: 'Ada', familyName: 'Adult', birthDate: '2008-05-30' },
        { givenName: 'Cleo', familyName: 'Child', birthDate: '2008-05-31' },
        { givenName: 'Uma', familyName: 'Unknown', birthDate: null },
        { givenName: 'Ivo', familyName: 'Bashful', birthDate: '1990-01-01', display: 'INITIALS' },
      ];
      for (const [index, athlete] of athletes.entries()) {
        await enter(api, meet, {
          athleteId: await makeAthlete(athlete),
          listedName: null,
          bib: String(index + 1),
        });
      }
      await enter(api, meet, { listedName: 'Ludo van Listed', bib: '5' });
      expect(await shown(meet)).toEqual(names);
    },
  );

  it('are whole on the call list, which the public does not get', async () => {
    const meet = await published('BIB');
    await enter(api, meet, {
      athleteId: await makeAthlete({ birthDate: '2013-03-03' }),
      listedName: null,
      bib: '9',
    });
    const whole = { callList: [{ name: 'Tamsin Ravenmoor', competitor: { bib: '9', displayName: '#9' } }] };
    for (const token of [
      meet.director,
      await api.token('referee', meet.meetId),
      await api.token('official', meet.competitionId),
      api.adminToken,
    ]) {
      expect((await api.data(CALLED, { id: meet.competitionId }, token)).competition).toEqual(whole);
    }
    const other = await makeMeet(api);
    for (const token of [null, other.director, await api.token('official', other.competitionId)]) {
      const { data, errors } = await api.send(CALLED, { id: meet.competitionId }, token);
      expect(data.competition).toEqual({ callList: null });
      expect(errors?.[0]?.extensions.code).toBe(token === null ? 'UNAUTHENTICATED' : 'FORBIDDEN');
    }
  });

  it('when changed are a new version of every competition that shows them', async () => {
    const meets = [await published('FULL'), await published('FULL')];
    const athleteId = await makeAthlete();
    const before: number[] = [];
    for (const meet of meets) {
      before.push((await enter(api, meet, { athleteId, listedName: null, bib: '1' })).competition.version);
    }
    const { athleteUpdate } = await api.data(
      UPDATE,
      { input: { athleteId, familyName: 'Ravenmoor-Lund' } },
      api.adminToken,
    );
    expect(athleteUpdate).toEqual({
      athlete: { familyName: 'Ravenmoor-Lund', birthDate: '1999-02-11' },
      userErrors: [],
    });
    for (const [index, meet] of meets.entries()) {
      const { version, startList: list } = await startList(meet);
      expect([version, list[0].displayName]).toEqual([(before[index] ?? 0) + 1, 'Tamsin Ravenmoor-Lund']);
    }
  });
});

describe('Athletes on record', () => {
  const LIST = '{ athletes(first: 100) { edges { node { givenName birthDate club { name } } } } }';

  it('are for directors and administrators', async () => {
    const meet = await makeMeet(api);
    const { club } = await makeClub('Lower Weir Throwers');
    await makeAthlete({ givenName: 'Wren', clubId: club.id });
    for (const token of [api.adminToken, meet.director]) {
      const { athletes } = await api.data(LIST, {}, token);
      expect(athletes.edges).toContainEqual({
        node: { givenName: 'Wren', birthDate: '1999-02-11', club: { name: 'Lower Weir Throwers' } },
      });
    }
    for (const token of [
      null,
      await api.token('referee', meet.meetId),
      await api.token('official', meet.competitionId),
    ]) {
      const { data, errors } = await api.send(LIST, {}, token);
      expect([data, errors?.[0]?.extensions.code]).toEqual([
        null,
        token === null ? 'UNAUTHENTICATED' : 'FORBIDDEN',
      ]);
    }
  });

  it('belong to clubs whose names are told apart', async () => {
    await makeClub('Twice Named');
    expect(await makeClub('Twice Named')).toEqual({
      club: null,
      userErrors: [{ code: 'NAME_TAKEN', path: ['input', 'name'] }],
    });
    const { clubs } = await api.data('{ clubs(first: 100) { edges { node { name } } } }');
    expect(clubs.edges).toContainEqual({ node: { name: 'Twice Named' } });
  });
});
