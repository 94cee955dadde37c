import { startApi, type TestApi } from '../support/api.js';
import { makeMeet } from '../support/made-meet.js';

const MEET_CREATE = `mutation ($input: MeetCreateInput!) {
  meetCreate(input: $input) {
    meet { id name endsOn edition minorsDisplay isPublished } isReplay userErrors { __typename code path message rule remedy }
  }
}`;
const COMPETITION_CREATE = `mutation ($input: CompetitionCreateInput!) {
  competitionCreate(input: $input) {
    competition {
      id event rules edition stage status version unit qualifying { standard fill }
      plan { rounds cuts { after through } cutTies reorderAfter reorder }
    }
    isReplay userErrors { code path }
  }
}`;
const input = { name: 'Autumn throws', startsOn: '2026-10-03', timeZone: 'Europe/Lisbon', rules: 'WA' };

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

describe('A meet', () => {
  const create = async (changed: object) =>
    (await api.data(MEET_CREATE, { input: { ...input, ...changed } }, api.adminToken)).meetCreate;

  it('is one day under the newest edition unless it says otherwise, and not public yet', async () => {
    const { meet, isReplay, userErrors } = await create({});
    expect({ meet, isReplay, userErrors }).toMatchObject({
      meet: { name: 'Autumn throws', endsOn: '2026-10-03', minorsDisplay: 'INITIALS', isPublished: false },
      isReplay: false,
      userErrors: [],
    });
    expect(meet.edition).toMatch(/\d{4}/);
  });

  it.each([
    [{ endsOn: '2026-10-02' }, 'DATES_NOT_IN_ORDER', 'endsOn'],
    [{ timeZone: 'Mars/Olympus' }, 'UNKNOWN_TIME_ZONE', 'timeZone'],
    [{ edition: '1896' }, 'UNKNOWN_EDITION', 'edition'],
  ])('with %j is a user error with its place and remedy', async (changed, code, field) => {
    const { meet, userErrors } = await create(changed);
    expect(meet).toBeNull();
    expect(userErrors).toEqual([
      {
        __typename: 'Refusal',
        code,
        path: ['input', field],
        message: expect.any(String),
        rule: null,
        remedy: expect.any(String),
      },
    ]);
  });

  it('is made once when the request is sent again, and not at all under a used id', async () => {
    const id = '01997f00-0000-7000-8000-000000000001';
    const first = await create({ id });
    const again = await create({ id });
    expect([first.isReplay, again.isReplay, again.meet]).toEqual([false, true, first.meet]);
    const other = await create({ id, name: 'Another meet' });
    expect([other.meet, other.userErrors[0].code]).toEqual([null, 'ID_REUSED']);
  });

  it('sent eight times at once is made once', async () => {
    const id = '01997f00-0000-7000-8000-000000000002';
    const made = await Promise.all(Array.from({ length: 8 }, () => create({ id })));
    expect(made.filter(({ isReplay }) => !isReplay)).toHaveLength(1);
    expect(made.every(({ meet }) => meet?.id === made[0].meet.id)).toBe(true);
  });

  it('is an administrator’s to make', async () => {
    const { director } = await makeMeet(api);
    const { errors } = await api.send(MEET_CREATE, { input }, director);
    expect(errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });
});

describe('Before it is published', () => {
  const SEE =
    'query ($meet: ID!, $competition: ID!) { meet(id: $meet) { id } competition(id: $competition) { id } }';
  const LIST = '{ meets(first: 100) { edges { node { id } } } }';
  const publish = (meetId: string, token: string) =>
    api.data(
      'mutation ($input: MeetPublishInput!) { meetPublish(input: $input) { meet { publishedAt } userErrors { code } } }',
      { input: { meetId } },
      token,
    );
  const listed = async (token: string | null = null): Promise<string[]> =>
    (await api.data(LIST, {}, token)).meets.edges.map((edge: any) => edge.node.id);

  it('a meet is seen by those who work on it, and by nobody else', async () => {
    const { meetId, competitionId, director } = await makeMeet(api);
    const other = await makeMeet(api);
    const ids = { meet: meetId, competition: competitionId };
    const whole = { meet: { id: meetId }, competition: { id: competitionId } };
    const nothing = { meet: null, competition: null };
    expect(await api.data(SEE, ids)).toEqual(nothing);
    expect(await api.data(SEE, ids, other.director)).toEqual(nothing);
    expect(await api.data(SEE, ids, await api.token('official', other.competitionId))).toEqual(nothing);
    for (const token of [
      api.adminToken,
      director,
      await api.token('referee', meetId),
      await api.token('official', competitionId),
    ]) {
      expect(await api.data(SEE, ids, token)).toEqual(whole);
    }
    expect(await listed()).not.toContain(meetId);
    expect(await listed(api.adminToken)).toContain(meetId);
  });

  it('and afterwards by everybody, from the first publication on', async () => {
    const { meetId, competitionId, director } = await makeMeet(api);
    const { meetPublish } = await publish(meetId, director);
    expect(meetPublish.userErrors).toEqual([]);
    expect((await publish(meetId, director)).meetPublish).toEqual(meetPublish);
    expect(await api.data(SEE, { meet: meetId, competition: competitionId })).toEqual({
      meet: { id: meetId },
      competition: { id: competitionId },
    });
    expect(await listed()).toContain(meetId);
  });
});

describe('Pages of meets', () => {
  it('hold every meet once, the latest first', async () => {
    const days = ['2031-01-05', '2031-01-04', '2031-01-04', '2031-01-03'];
    for (const startsOn of days) await makeMeet(api, { startsOn });
    const PAGE =
      'query ($after: String) { meets(first: 3, after: $after) { edges { node { id startsOn } } pageInfo { hasNextPage endCursor hasPreviousPage } } }';
    const seen: { id: string; startsOn: string }[] = [];
    for (let after: string | null = null; ; ) {
      const { meets }: any = await api.data(PAGE, { after }, api.adminToken);
      expect(meets.pageInfo.hasPreviousPage).toBe(after !== null);
      seen.push(...meets.edges.map((edge: any) => edge.node));
      if (!meets.pageInfo.hasNextPage) break;
      after = meets.pageInfo.endCursor;
    }
    expect(new Set(seen.map(({ id }) => id)).size).toBe(seen.length);
    const starts = seen.map(({ startsOn }) => startsOn);
    expect(starts).toEqual([...starts].sort().reverse());
    expect(starts.slice(0, 4)).toEqual(days);
  });
});

describe('A competition', () => {
  const create = async (competition: object, meet: object = {}) => {
    const { meetId, director } = await makeMeet(api, meet);
    const given = { meetId, title: 'Shot men', event: 'SHOT', ...competition };
    return (await api.data(COMPETITION_CREATE, { input: given }, director)).competitionCreate;
  };

  // World Athletics Technical Rules, TR25: six trials, eight go on after three, the worst first afterwards.
  it('takes rule set and plan from its meet', async () => {
    const { competition } = await create({});
    expect(competition).toMatchObject({
      event: 'SHOT',
      rules: 'WA',
      stage: 'FINAL',
      status: 'DRAFT',
      version: 0,
      unit: 'CM',
      qualifying: null,
      plan: {
        rounds: 6,
        cuts: [{ after: 3, through: 8 }],
        cutTies: 'NEXT_BEST',
        reorderAfter: [3],
        reorder: 'REVERSE',
      },
    });
  });

  it('may set parts of the plan itself', async () => {
    const plan = { rounds: 4, cuts: [], reorderAfter: [2], reorder: 'LEADERS_FIRST' };
    const { competition } = await create({ plan });
    expect(competition.plan).toEqual({ ...plan, cutTies: 'NEXT_BEST' });
  });

  it('as a qualification has its standard, in its unit', async () => {
    const { competition } = await create({
      stage: 'QUALIFICATION',
      qualifying: { standard: '17.50', fill: 12 },
    });
    expect(competition).toMatchObject({
      stage: 'QUALIFICATION',
      qualifying: { standard: '17.50', fill: 12 },
      plan: { rounds: 3, cuts: [] },
    });
  });

  it.each([
    [{ plan: { rounds: 13 } }, 'PLAN', ['plan', 'rounds']],
    [
      {
        plan: {
          cuts: [
            { after: 3, through: 8 },
            { after: 3, through: 6 },
          ],
        },
      },
      'NOT_RISING',
      ['plan', 'cuts', '1', 'after'],
    ],
    [{ plan: { rounds: 3, reorderAfter: [3] } }, 'PLAN', ['plan', 'reorderAfter', '0']],
    [{ stage: 'QUALIFICATION' }, 'QUALIFYING_MISSING', ['qualifying']],
    [{ qualifying: { standard: '17.50' } }, 'QUALIFYING_NOT_EXPECTED', ['qualifying']],
    [
      { stage: 'QUALIFICATION', qualifying: { standard: '57-05.00' } },
      'WRONG_UNIT',
      ['qualifying', 'standard'],
    ],
    [{ event: 'LONG_JUMP', implementGrams: 5000 }, 'IMPLEMENT_NOT_EXPECTED', ['implementGrams']],
    [{ edition: '1896' }, 'UNKNOWN_EDITION', ['edition']],
    [{ rules: 'NFHS', edition: '1896' }, 'UNKNOWN_EDITION', ['edition']],
  ])('with %j is refused at its place', async (competition, code, path) => {
    const made = await create(competition);
    expect([made.competition, made.userErrors]).toEqual([null, [{ code, path: ['input', ...path] }]]);
  });

  it('tells all that is wrong at once', async () => {
    const { userErrors } = await create({
      event: 'LONG_JUMP',
      implementGrams: 1,
      stage: 'QUALIFICATION',
      plan: { rounds: 0 },
    });
    expect(userErrors.map(({ code }: any) => code)).toEqual([
      'IMPLEMENT_NOT_EXPECTED',
      'QUALIFYING_MISSING',
      'PLAN',
    ]);
  });

  it('is listed with its meet by time', async () => {
    const { meetId, director } = await makeMeet(api);
    for (const [title, startsAt] of [
      ['late', '2026-05-30T15:00:00+02:00'],
      ['early', '2026-05-30T12:30:00Z'],
    ]) {
      await api.data(COMPETITION_CREATE, { input: { meetId, title, event: 'HAMMER', startsAt } }, director);
    }
    const { meet } = await api.data(
      'query ($id: ID!) { meet(id: $id) { competitions { title startsAt meet { id } } } }',
      { id: meetId },
      director,
    );
    expect(meet.competitions).toEqual([
      { title: 'early', startsAt: '2026-05-30T12:30:00.000Z', meet: { id: meetId } },
      { title: 'late', startsAt: '2026-05-30T13:00:00.000Z', meet: { id: meetId } },
      { title: 'Discus women', startsAt: null, meet: { id: meetId } },
    ]);
  });
});

describe('a copy of last year’s meet', () => {
  const COPY = `mutation ($input: MeetCopyInput!) { meetCopy(input: $input) {
    meet { id name venue startsOn endsOn isPublished } isReplay userErrors { code path }
  } }`;
  const WHOLE = `query ($id: ID!) { meet(id: $id) {
    competitions { id title event status version startsAt startList { bib } crew { post name } }
    timetable { revision facilities { key } slots { facility { key } startsAt competitions { title } } }
    scoring { preset } entryTerms { closesAt mostPerClub competitionLimits { competitionId } }
    callingGroups { title startsAt competitions { title } }
  } }`;

  async function done(document: string, input: object, token: string): Promise<any> {
    const payload = Object.values<any>(await api.data(document, { input }, token))[0];
    if (payload.userErrors.length > 0) throw new Error(JSON.stringify(payload.userErrors));
    return payload;
  }

  /** A timetable, terms of entry, a crew, a calling group and somebody who competes. */
  async function furnish(
    { meetId, competitionId, director }: { meetId: string; competitionId: string; director: string },
    shotId: string,
  ): Promise<void> {
    const slot = { facility: 'fan', startsAt: '2026-10-10T12:00:00Z', minutes: 60, reportMinutes: 30 };
    await done(
      'mutation ($input: TimetableSetInput!) { timetableSet(input: $input) { userErrors { code path } } }',
      {
        ...{ meetId, expectedRevision: 0, facilities: [{ key: 'fan', name: 'Fan' }], sharedGrounds: [] },
        slots: [{ ...slot, competitionIds: [competitionId] }],
      },
      director,
    );
    await done(
      'mutation ($input: MeetEntryTermsSetInput!) { meetEntryTermsSet(input: $input) { userErrors { code } } }',
      {
        ...{ meetId, expectedRevision: 0, closesAt: '2026-10-01T17:00:00Z', mostPerClub: 3 },
        competitionLimits: [{ competitionId, mostPerClub: 2 }],
      },
      director,
    );
    await done(
      'mutation ($input: CrewSetInput!) { crewSet(input: $input) { userErrors { code } } }',
      { competitionId, members: [{ post: 'JUDGE', name: 'Orla Fennick' }] },
      director,
    );
    await done(
      `mutation ($input: CallingGroupCreateInput!) { callingGroupCreate(input: $input) { userErrors { code } } }`,
      { meetId, title: 'Circle 1', competitionIds: [shotId], startsAt: '2026-10-11T09:00:00Z' },
      director,
    );
    await done(
      `mutation ($input: CompetitorEnterInput!) { competitorEnter(input: $input) { userErrors { code } } }`,
      { competitionId, listedName: 'Nobody Known', reason: 'late' },
      director,
    );
  }

  it('has everything but those who compete, at the same time of day', async () => {
    const startsOn = '2026-10-10';
    const heights = { heights: ['1.50', '1.60'] };
    const vertical = { title: 'High jump', event: 'HIGH_JUMP', vertical: heights };
    const made = await makeMeet(
      api,
      { startsOn, endsOn: '2026-10-11', timeZone: 'Europe/London' },
      { ...vertical, startsAt: '2026-10-10T12:00:00Z' },
    );
    const { meetId } = made;
    const more = { meetId, title: 'Shot', event: 'SHOT', startsAt: '2026-10-11T09:00:00Z' };
    const { competition } = await done(COMPETITION_CREATE, more, made.director);
    await furnish(made, competition.id);
    const input = {
      id: '01997f00-0000-7000-8000-0000000000c1',
      meetId,
      name: 'Next autumn',
      startsOn: '2026-11-07',
    };
    const { meet } = await done(COPY, { ...input, isWithCrew: true }, api.adminToken);
    expect(meet).toMatchObject({ startsOn: '2026-11-07', endsOn: '2026-11-08', isPublished: false });
    expect((await done(COPY, { ...input, isWithCrew: true }, api.adminToken)).isReplay).toBe(true);
    const { meet: whole } = await api.data(WHOLE, { id: meet.id }, api.adminToken);
    // British clocks go back on 25 October 2026: noon UTC in summer is one o'clock there, and so in November.
    expect(whole.competitions).toMatchObject([
      {
        ...{ title: 'High jump', status: 'DRAFT', startList: [], startsAt: '2026-11-07T13:00:00.000Z' },
        crew: [{ post: 'JUDGE', name: 'Orla Fennick' }],
      },
      { title: 'Shot', startList: [], startsAt: '2026-11-08T10:00:00.000Z', crew: [] },
    ]);
    expect(whole.timetable.slots).toMatchObject([
      {
        facility: { key: 'fan' },
        startsAt: '2026-11-07T13:00:00.000Z',
        competitions: [{ title: 'High jump' }],
      },
    ]);
    expect(whole.entryTerms).toEqual({
      ...{ closesAt: '2026-10-29T18:00:00.000Z', mostPerClub: 3 },
      competitionLimits: [{ competitionId: whole.competitions[0].id }],
    });
    expect(whole.callingGroups).toMatchObject([
      { title: 'Circle 1', startsAt: '2026-11-08T10:00:00.000Z', competitions: [{ title: 'Shot' }] },
    ]);
  });
});
