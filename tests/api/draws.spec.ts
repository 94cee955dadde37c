import { randomUUID } from 'node:crypto';
import { drawFlights, type DrawEntry } from '#rules';
import { startApi, type TestApi } from '../support/api.js';
import { enterInJournal } from '../support/circle.js';
import { enter, makeMeet, type MadeMeet } from '../support/made-meet.js';

const SEED = 'Evening of throws 2026, discus women, 417 203';

const DRAWN = `id number isInForce procedure seed method areClubmatesApart isAsDrawn reason
  entries { bib seedMark club } flights { label bibs } amendments { kind lines { bib flight } }`;

const DRAW = `mutation ($input: StartListDrawInput!) { startListDraw(input: $input) {
  flights { label bibs } draw { ${DRAWN} } competition { version startList { bib flight } } isReplay
  userErrors { code path message rule remedy }
} }`;

const READ = `query ($id: ID!) { competition(id: $id) { version draws { ${DRAWN} } startList { bib flight } } }`;

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

interface Listed {
  readonly meet: MadeMeet;
  /** By bib. */
  readonly ids: Readonly<Record<string, string>>;
}

const FIELD = [
  { bib: '11', listedClub: 'Heron', seedMark: '48.20' },
  { bib: '12', listedClub: 'Heron', seedMark: '45.00' },
  { bib: '13', listedClub: 'Heron', seedMark: null },
  { bib: '14', listedClub: 'Otter', seedMark: '51.31' },
  { bib: '15', listedClub: 'Otter', seedMark: '45.00' },
  { bib: '16', listedClub: null, seedMark: '39.99' },
];

async function listed(competition: object = {}, field: readonly object[] = FIELD): Promise<Listed> {
  const meet = await makeMeet(api, {}, competition);
  const ids: Record<string, string> = {};
  for (const line of field) {
    const { competitor, userErrors } = await enter(api, meet, line);
    if (!competitor) throw new Error(JSON.stringify(userErrors));
    ids[competitor.bib] = competitor.id;
  }
  return { meet, ids };
}

async function read({ meet }: Listed, token: string | null = meet.director): Promise<any> {
  return (await api.data(READ, { id: meet.competitionId }, token)).competition;
}

async function draw(list: Listed, input: object = {}): Promise<any> {
  const { version: expectedVersion } = await read(list);
  const asked = { competitionId: list.meet.competitionId, expectedVersion, seed: SEED, ...input };
  return (await api.data(DRAW, { input: asked }, list.meet.director)).startListDraw;
}

const codes = ({ userErrors }: any): string[] => userErrors.map(({ code }: any) => code);
const bibsOf = (flights: readonly any[]): string[] => flights.map(({ bibs }) => bibs.join(' '));

describe('a drawn start list', () => {
  it('is what anybody draws from the published record, in flights with clubmates apart', async () => {
    const list = await listed();
    const { draw: made, flights, competition, userErrors } = await draw(list, { flights: 2 });
    expect(userErrors).toEqual([]);
    const entries: DrawEntry[] = made.entries.map(({ bib: key, club }: any) => ({
      key,
      seedMark: null,
      club,
    }));
    const again = drawFlights(entries, { seed: SEED, method: 'lot', flights: 2, clubmatesApart: true });
    if (!again.ok) throw new Error('not drawn');
    expect(flights).toEqual([
      { label: 'A', bibs: again.draw.flights[0] },
      { label: 'B', bibs: again.draw.flights[1] },
    ]);
    expect(made).toMatchObject({ number: 1, isInForce: true, isAsDrawn: true, reason: null, seed: SEED });
    // Marks are not part of a draw by lot, and so not of its record.
    expect(made.entries).toContainEqual({ bib: '11', seedMark: null, club: 'Heron' });
    expect(competition.startList).toEqual(
      flights.flatMap(({ label, bibs }: any) => bibs.map((bib: string) => ({ bib, flight: label }))),
    );
    // Two of three from one club, and the two of the other apart.
    for (const { bibs } of flights)
      expect(bibs.filter((bib: string) => ['14', '15'].includes(bib))).toHaveLength(1);
  });

  it('is public with its record as soon as the meet is', async () => {
    const list = await listed();
    await draw(list);
    expect(await read(list, null)).toBeNull();
    const publish = 'mutation ($id: ID!) { meetPublish(input: { meetId: $id }) { userErrors { code } } }';
    await api.data(publish, { id: list.meet.meetId }, list.meet.director);
    expect((await read(list, null)).draws).toMatchObject([{ seed: SEED, isAsDrawn: true }]);
  });

  it('by seed marks has the best flight last and says with which marks', async () => {
    const list = await listed();
    const { draw: made, flights } = await draw(list, { method: 'SEED_MARKS', flights: 2 });
    const [first, last] = flights.map(({ bibs }: any) => bibs.toSorted());
    // Of the two with 45.00 one is in each: the lot decides which.
    expect([first[0] === '12' || first[2] === '15', last]).toEqual([
      true,
      expect.arrayContaining(['11', '14']),
    ]);
    expect(first).toEqual(expect.arrayContaining(['13', '16']));
    expect(made.entries).toContainEqual({ bib: '14', seedMark: '51.31', club: null });
    expect(made.isAsDrawn).toBe(true);
  });

  it('in groups of equal strength has the best two apart', async () => {
    const { flights } = await draw(await listed(), { method: 'EQUAL_STRENGTH', flights: 2 });
    for (const { bibs } of flights)
      expect(bibs.filter((bib: string) => ['11', '14'].includes(bib))).toHaveLength(1);
  });

  it('has as many flights as the rule set or the meet says', async () => {
    const many = Array.from({ length: 13 }, (_, at) => ({ bib: String(at + 1) }));
    const highSchool = await listed({ rules: 'NFHS' }, many);
    expect(bibsOf((await draw(highSchool, { isPreview: true })).flights)).toHaveLength(2);
    const sized = await draw(highSchool, { isPreview: true, flightSize: { min: 4, max: 5 } });
    expect(sized.flights.map(({ bibs }: any) => bibs.length).sort()).toEqual([4, 4, 5]);
    expect((await draw(await listed({}, many))).flights).toMatchObject([{ label: null }]);
  });
});

describe('a preview', () => {
  it('says what would be drawn and changes nothing', async () => {
    const list = await listed();
    const before = await read(list);
    const preview = await draw(list, { flights: 3, isPreview: true });
    expect([preview.draw, preview.userErrors]).toEqual([null, []]);
    expect(await read(list)).toEqual(before);
    expect((await draw(list, { flights: 3 })).flights).toEqual(preview.flights);
  });
});

describe('a draw', () => {
  it('sent again gives the same answer, and another one under its id is refused', async () => {
    const list = await listed();
    const [id, expectedVersion] = [randomUUID(), (await read(list)).version];
    const first = await draw(list, { id, expectedVersion });
    const again = await draw(list, { id, expectedVersion });
    expect([again.isReplay, again.draw]).toEqual([true, first.draw]);
    expect(codes(await draw(list, { id, seed: 'another' }))).toEqual(['ID_REUSED']);
    expect((await read(list)).draws).toHaveLength(1);
  });

  it('is made again with a reason, and both stay on record', async () => {
    const list = await listed();
    await draw(list);
    expect((await draw(list, { seed: 'second' })).userErrors).toEqual([
      {
        code: 'REASON_MISSING',
        path: ['input', 'reason'],
        message: 'The start list is drawn already.',
        rule: null,
        remedy: 'Say why it is drawn again; the draw before stays on record.',
      },
    ]);
    await draw(list, { seed: 'second', reason: 'bib 13 was missing' });
    const { draws } = await read(list);
    expect(
      draws.map(({ number, seed, isInForce, reason }: any) => [number, seed, isInForce, reason]),
    ).toEqual([
      [1, SEED, false, null],
      [2, 'second', true, 'bib 13 was missing'],
    ]);
  });

  it('is not made after the first trial, and says by which rule', async () => {
    const list = await listed();
    const official = await api.token('official', list.meet.competitionId);
    await enterInJournal(api, official, 'attemptRecord', {
      ...{ competitionId: list.meet.competitionId, competitorId: list.ids['11'] },
      ...{ round: 1, outcome: 'VALID', mark: '40.00' },
    });
    expect((await draw(list)).userErrors).toMatchObject([
      { code: 'COMPETITION_STARTED', rule: 'WA TR25.5', remedy: expect.stringContaining('order of a round') },
    ]);
  });

  it.each([
    ['START_LIST_EMPTY', {}, {}, []],
    ['FLIGHTS', { flights: 7 }, {}, FIELD],
    ['FLIGHTS_OR_SIZE', { flights: 2, flightSize: { min: 1, max: 3 } }, {}, FIELD],
    ['FLIGHT_SIZE', { flightSize: { min: 5, max: 5 } }, {}, FIELD],
    ['FLIGHT_SIZE', { flightSize: { min: 5, max: 4 } }, {}, FIELD],
    ['NO_SEED_MARKS', { method: 'SEED_MARKS' }, {}, [{ bib: '1' }]],
    [
      'FLIGHTS',
      { flights: 2 },
      { event: 'HIGH_JUMP', vertical: { heights: ['1.50'] } },
      [{ bib: '1' }, { bib: '2' }],
    ],
    ['VERSION_CONFLICT', { expectedVersion: 0 }, {}, FIELD],
  ])('is refused: %s', async (code, input, competition, field) => {
    const list = await listed(competition, field);
    const { draw: made, userErrors } = await draw(list, input);
    expect([made, userErrors]).toMatchObject([null, [{ code }]]);
    expect(userErrors[0].remedy).not.toBe('');
    expect((await read(list)).draws).toEqual([]);
  });

  it('asked for twice at the same moment is made once', async () => {
    const list = await listed();
    const { version: expectedVersion } = await read(list);
    const two = await Promise.all([
      draw(list, { expectedVersion }),
      draw(list, { expectedVersion, seed: 'b' }),
    ]);
    expect(two.flatMap(codes)).toEqual(['VERSION_CONFLICT']);
    const again = { id: randomUUID(), expectedVersion: expectedVersion + 1, reason: 'one was missing' };
    const same = await Promise.all([draw(list, again), draw(list, again)]);
    expect(same.flatMap(codes)).toEqual([]);
    expect(same.map(({ isReplay }) => isReplay).sort()).toEqual([false, true]);
    expect((await read(list)).draws).toHaveLength(2);
  });

  it('and a first trial at the same moment leave a list that one of them made', async () => {
    const list = await listed();
    const { version: expectedVersion, startList } = await read(list);
    const official = await api.token('official', list.meet.competitionId);
    const trial = {
      competitionId: list.meet.competitionId,
      competitorId: list.ids['11'],
      round: 1,
      outcome: 'FOUL',
    };
    const [drawn, recorded] = await Promise.all([
      draw(list, { expectedVersion }),
      enterInJournal(api, official, 'attemptRecord', trial),
    ]);
    expect(recorded.entry.standing).toBe('ACCEPTED');
    const after = await read(list);
    const isDrawn = codes(drawn).length === 0;
    expect(after.draws).toHaveLength(isDrawn ? 1 : 0);
    if (!isDrawn) expect(after.startList).toEqual(startList);
  });

  it('is the director’s', async () => {
    const list = await listed();
    const input = { competitionId: list.meet.competitionId, expectedVersion: 6, seed: SEED };
    const others = [
      await api.token('referee', list.meet.meetId),
      await api.token('official', list.meet.competitionId),
      (await makeMeet(api)).director,
    ];
    for (const token of others)
      expect((await api.send(DRAW, { input }, token)).errors?.[0]?.extensions.code).toBe('FORBIDDEN');
  });
});

describe('a start list after its draw', () => {
  const ORDER = `mutation ($input: StartOrderSetInput!) { startOrderSet(input: $input) { userErrors { code } } }`;
  const WITHDRAW = `mutation ($input: CompetitorWithdrawInput!) { competitorWithdraw(input: $input) { userErrors { code } } }`;

  it('takes late entries at the end of the flight they name, and no others', async () => {
    const list = await listed();
    await draw(list, { flights: 2 });
    expect((await enter(api, list.meet, { bib: '99' })).userErrors).toMatchObject([
      { code: 'FLIGHT_MISSING', path: ['input', 'flight'] },
    ]);
    expect(codes(await enter(api, list.meet, { bib: '99', flight: 'C' }))).toEqual(['FLIGHT_MISSING']);
    expect(codes(await enter(api, list.meet, { bib: '99', flight: 'A' }))).toEqual([]);
    const { startList, draws } = await read(list);
    expect(startList.filter(({ flight }: any) => flight === 'A').at(-1)).toEqual({ bib: '99', flight: 'A' });
    expect(draws[0].amendments).toEqual([{ kind: 'ENTERED_LATE', lines: [{ bib: '99', flight: 'A' }] }]);
    expect(draws[0].isAsDrawn).toBe(true);
  });

  it('may be changed by hand, flights as well, and the record says so beside the draw', async () => {
    const list = await listed();
    const { flights } = await draw(list, { flights: 2 });
    const [a, b] = flights.map(({ bibs }: any) => bibs);
    await api.data(WITHDRAW, { input: { competitorId: list.ids[a[0]] } }, list.meet.director);
    // The second of flight A goes to the end of flight B.
    const order = [a[2], ...b, a[1]];
    const lines = order.map((bib) => ({ competitorId: list.ids[bib], flight: bib === a[2] ? 'A' : 'B' }));
    const { version: expectedVersion } = await read(list);
    const input = { competitionId: list.meet.competitionId, expectedVersion, lines };
    expect((await api.data(ORDER, { input }, list.meet.director)).startOrderSet.userErrors).toEqual([]);
    const { startList, draws } = await read(list);
    expect(startList).toEqual(order.map((bib) => ({ bib, flight: bib === a[2] ? 'A' : 'B' })));
    expect(draws[0].amendments).toEqual([
      { kind: 'WITHDRAWN', lines: [{ bib: a[0], flight: 'A' }] },
      { kind: 'SET_BY_HAND', lines: startList },
    ]);
    expect(draws[0].flights).toEqual(flights);
  });
});

describe('seed marks', () => {
  it('are shown to those who work at the competition, in its unit', async () => {
    const list = await listed();
    const CALLED = 'query ($id: ID!) { competition(id: $id) { callList { seedMark competitor { bib } } } }';
    const { callList } = (await api.data(CALLED, { id: list.meet.competitionId }, list.meet.director))
      .competition;
    expect(callList[3]).toEqual({ seedMark: '51.31', competitor: { bib: '14' } });
    expect((await enter(api, list.meet, { bib: '9', seedMark: '160-00.00' })).userErrors).toMatchObject([
      { code: 'WRONG_UNIT', path: ['input', 'seedMark'] },
    ]);
  });
});
