import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet, staffedMeet } from '../support/circle.js';
import { Tent } from '../support/inspection.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

/** Women of 1 kg, and one of 0.75 kg among them. */
const SHEET = discusSheet(3, {
  category: { sex: 'W' },
  implementGrams: 1000,
  competitors: [{ bib: '1' }, { bib: '2' }, { bib: '3', implementGrams: 750 }],
});

async function open(sheet: object = SHEET): Promise<{ circle: Circle; tent: Tent }> {
  const circle = await Circle.open(api, sheet);
  return { circle, tent: new Tent(api, circle) };
}

const codes = (userErrors: any[]): unknown[] => userErrors.map(({ code, path }) => [code, path]);

const SPECIFICATIONS = `query ($id: ID!) { competition(id: $id) { implementSpecifications {
  grams rule isConfirmed tableGrams limits { what minMm maxMm rule isConfirmed } competitors caution
} } }`;

describe('the limits on the screen', () => {
  const read = async ({ competition }: Circle): Promise<any[]> =>
    (await api.data(SPECIFICATIONS, { id: competition.id })).competition.implementSpecifications;

  it('of a discus of boys U18 are known to everybody, with their rules and a caution', async () => {
    const { circle } = await open(discusSheet(2, { category: { sex: 'M', age: 'U18' } }));
    // 1.5 kg: regulations of the U18 championships of 2016 (docslib.org). 200 to 202 mm and a plate of 50 to 57 mm:
    // requirements of a masters championship (perth2016.com).
    const cited = { rule: 'WA TR34', isConfirmed: true };
    expect(await read(circle)).toEqual([
      {
        grams: 1500,
        rule: 'WA TR32, table of implements',
        isConfirmed: true,
        tableGrams: null,
        limits: [
          { what: 'DIAMETER', minMm: 200, maxMm: 202, ...cited },
          { what: 'CENTRE_PLATE', minMm: 50, maxMm: 57, ...cited },
        ],
        competitors: [circle.competitorOf(1), circle.competitorOf(2)],
        caution: expect.stringContaining('referee'),
      },
    ]);
  });

  it('are listed for each mass that is thrown, and say where the meet differs from the table', async () => {
    const { circle } = await open();
    const shown = (await read(circle)).map(({ grams, rule, tableGrams, competitors }) => [
      ...[grams, rule, tableGrams],
      competitors.length,
    ]);
    expect(shown).toEqual([
      [1000, 'WA TR32, table of implements', null, 2],
      [750, 'regulations of the meet', 1000, 1],
    ]);
  });

  it('are none where nothing is thrown or nobody says what', async () => {
    const jump = await open(discusSheet(1, { event: 'long-jump' }));
    const nobody = await open(discusSheet(1, { category: { sex: 'M', age: 'U13' } }));
    expect([await read(jump.circle), await read(nobody.circle)]).toEqual([[], []]);
  });
});

describe('the register', () => {
  it('knows whose an implement is, and takes the same request again', async () => {
    const { circle, tent } = await open();
    const { clubCreate } = await api.data(
      `mutation { clubCreate(input: { name: "Otter Throws ${randomUUID()}" }) { club { id name } } }`,
      {},
      circle.director,
    );
    const input = {
      event: 'DISCUS',
      grams: 1000,
      label: 'OT 7',
      clubId: clubCreate.club.id,
      id: randomUUID(),
    };
    const { implement } = await tent.call('implementRegister', input);
    expect(implement).toMatchObject({
      ...{ id: input.id, event: 'DISCUS', grams: 1000, label: 'OT 7', status: 'NOT_INSPECTED', log: [] },
      owner: { kind: 'CLUB', name: clubCreate.club.name },
    });
    expect(await tent.call('implementRegister', input)).toMatchObject({ isReplay: true });
    const { userErrors } = await tent.call('implementRegister', { ...input, label: 'OT 8' });
    expect(codes(userErrors)).toEqual([['ID_REUSED', ['input', 'id']]]);
    expect(await tent.implement(await tent.register())).toMatchObject({
      owner: { kind: 'POOL', name: null },
    });
  });

  it('shows an athlete’s name as far as the reader may see it', async () => {
    const { circle, tent } = await open(discusSheet(0));
    const { athleteCreate } = await api.data(
      `mutation { athleteCreate(input: { givenName: "Odalys", familyName: "Thornwick", sex: W }) { athlete { id } } }`,
      {},
      circle.director,
    );
    const { competitorEnter } = await api.data(
      `mutation ($input: CompetitorEnterInput!) { competitorEnter(input: $input) { competitor { id } } }`,
      { input: { competitionId: circle.competition.id, athleteId: athleteCreate.athlete.id, bib: '9' } },
      circle.director,
    );
    const id = await tent.register({ competitorId: competitorEnter.competitor.id });
    const nameFor = async (token: string) => (await tent.implement(id, circle.meet.id, token)).owner.name;
    expect([await nameFor(circle.official), await nameFor(circle.referee)]).toEqual([
      'O. T.',
      'Odalys Thornwick',
    ]);
  });

  it.each([
    ['two owners', 'OWNER_TWICE', true],
    ['an owner who is only a name', 'OWNER_NOT_ON_RECORD', false],
  ])('refuses %s', async (_what, code, hasClub) => {
    const { circle, tent } = await open();
    const clubId = Buffer.from(`Club:${randomUUID()}`).toString('base64url');
    const owners = { competitorId: circle.competitorOf(1), ...(hasClub && { clubId }) };
    const { userErrors } = await tent.call('implementRegister', {
      ...{ event: 'DISCUS', grams: 1000, label: 'LT 1' },
      ...owners,
    });
    expect(codes(userErrors)).toEqual([[code, ['input', 'competitorId']]]);
  });

  it('is of the organisation: an implement comes back to another meet, and is inspected anew there', async () => {
    const { circle, tent } = await open();
    const label = `LT ${randomUUID()}`;
    const id = await tent.passed({ label });
    const other = await Circle.open(api, SHEET, await staffedMeet(api));
    const elsewhere = new Tent(api, other);
    expect(await elsewhere.implement(id, other.meet.id)).toMatchObject({ status: 'NOT_INSPECTED', log: [] });
    const ofMeet = `query ($id: ID!) { meet(id: $id) { implements(event: DISCUS) { label status } } }`;
    const listed = async ({ meet, official }: Circle): Promise<any[]> =>
      (await api.data(ofMeet, { id: meet.id }, official)).meet.implements;
    expect(await listed(other)).toEqual([]);
    await elsewhere.inspect(id, 998);
    expect([await listed(other), await listed(circle)]).toEqual([
      [{ label, status: 'FAILED' }],
      [{ label, status: 'PASSED' }],
    ]);
    const found = await everything(other, label);
    expect(found).toEqual([{ label, status: 'FAILED' }]);
  });

  /** Reads the register page by page. */
  async function everything({ meet, official }: Circle, label: string): Promise<any[]> {
    const document = `query ($meetId: ID!, $after: String) {
      registeredImplements(meetId: $meetId, event: DISCUS, first: 2, after: $after) {
        edges { cursor node { label status } } pageInfo { hasNextPage endCursor }
      } }`;
    const nodes: any[] = [];
    for (let after: string | null = null; ; ) {
      const answer: any = await api.data(document, { meetId: meet.id, after }, official);
      const { edges, pageInfo } = answer.registeredImplements;
      nodes.push(...edges.map(({ node }: any) => node));
      if (!pageInfo.hasNextPage) return nodes.filter((node) => node.label === label);
      after = pageInfo.endCursor;
    }
  }

  it('is open to those who work at the meet, and to nobody else', async () => {
    const { circle, tent } = await open();
    const id = await tent.passed();
    const stranger = await Circle.open(api, SHEET);
    const query = `query ($id: UUID!, $meetId: ID!) { implement(id: $id, meetId: $meetId) { label } }`;
    const list = `query ($id: ID!) { meet(id: $id) { implements { label } } }`;
    const variables = { id, meetId: circle.meet.id };
    for (const token of [stranger.official, stranger.referee, stranger.director]) {
      expect((await api.send(query, variables, token)).errors?.[0]?.extensions.code).toBe('FORBIDDEN');
      const read = await api.send(list, { id: circle.meet.id }, token);
      expect(read.errors?.[0]?.extensions.code).toBe('FORBIDDEN');
      const look = await tent.send('implementInspect', { implementId: id, grams: 1000 }, token);
      expect(look.errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    }
    const publicly = await api.send(list, { id: circle.meet.id });
    expect(publicly.errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
    // Nobody records from outside the meet, an administrator least of all; reading is another thing.
    const byAdmin = await tent.send('implementInspect', { implementId: id, grams: 1000 }, api.adminToken);
    expect(byAdmin.errors?.[0]?.extensions.code).toBe('FORBIDDEN');
    expect(await tent.implement(id, circle.meet.id, api.adminToken)).toMatchObject({ status: 'PASSED' });
  });
});

describe('an inspection', () => {
  it('holds every measure against its limit and says so in a sentence with the rule', async () => {
    const { circle, tent } = await open();
    const id = await tent.register();
    const dimensions = [
      { what: 'DIAMETER', mm: 183 },
      { what: 'CENTRE_PLATE', mm: 50 },
    ];
    const competitionId = circle.competition.id;
    const { inspection, implement, notices } = await tent.inspect(id, 998, { dimensions, competitionId });
    // 1 kg: 180 to 182 mm, plate 50 to 57 mm (perth2016.com).
    expect(inspection.findings.map(({ sentence, verdict }: any) => [sentence, verdict])).toEqual([
      ['mass 998 g, at least 1000 g (WA TR32, table of implements)', 'TOO_SMALL'],
      ['diameter 183 mm, 180 to 182 mm (WA TR34)', 'TOO_LARGE'],
      ['centre plate 50 mm, 50 to 57 mm (WA TR34)', 'PASSES'],
    ]);
    expect(inspection).toMatchObject({ outcome: 'FAILED', authority: 'official', sequence: 1, dimensions });
    expect([implement.status, notices]).toEqual(['FAILED', ['FAILED']]);
  });

  it('is corrected by another, once, with a reason; both stay in the log', async () => {
    const { tent } = await open();
    const id = await tent.register();
    const { inspection: first } = await tent.inspect(id, 998, { isKeptBack: true });
    expect((await tent.implement(id)).status).toBe('KEPT_BACK');
    const correction = { replacesId: first.id, reason: 'the scale was not level' };
    await tent.inspect(id, 1003, correction);
    const { status, log, lastInspection } = await tent.implement(id);
    expect([status, lastInspection.outcome]).toEqual(['PASSED', 'PASSED']);
    expect(
      log.map(({ sequence, outcome, replacesId, reason }: any) => [sequence, outcome, replacesId, reason]),
    ).toEqual([
      [1, 'FAILED', null, null],
      [2, 'PASSED', first.id, 'the scale was not level'],
    ]);
    const again = await tent.inspect(id, 1002, correction);
    expect(codes(again.userErrors)).toEqual([['REPLACED_ALREADY', ['input', 'replacesId']]]);
  });

  it('may be sent again; many at once are all kept, each under its number', async () => {
    const { tent } = await open();
    const id = await tent.register();
    const look = { id: randomUUID() };
    await tent.inspect(id, 1002, look);
    expect(await tent.inspect(id, 1002, look)).toMatchObject({ isReplay: true, inspection: { sequence: 1 } });
    const other = await tent.inspect(id, 1003, look);
    expect(codes(other.userErrors)).toEqual([['ID_REUSED', ['input', 'id']]]);
    await Promise.all(Array.from({ length: 8 }, (_, at) => tent.inspect(id, 1000 + at)));
    const { log } = await tent.implement(id);
    expect(log.map(({ sequence }: any) => sequence)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it.each<[string, object, string, string[]]>([
    ['nothing measured', { grams: null }, 'NOTHING_MEASURED', ['grams']],
    [
      'a measure of another event',
      { dimensions: [{ what: 'HEAD', mm: 95 }] },
      'DIMENSION_NOT_OF_EVENT',
      ['dimensions', '0', 'what'],
    ],
    [
      'a measure twice',
      {
        dimensions: [
          { what: 'DIAMETER', mm: 181 },
          { what: 'DIAMETER', mm: 182 },
        ],
      },
      'MEASURED_TWICE',
      ['dimensions', '1', 'what'],
    ],
    ['a correction without a reason', { replacesId: randomUUID() }, 'REASON_MISSING', ['reason']],
    ['a reason for nothing', { reason: 'why not' }, 'REASON_NOT_EXPECTED', ['reason']],
    ['a correction of nothing', { replacesId: randomUUID(), reason: 'x' }, 'NOT_FOUND', ['replacesId']],
    ['another implement than there is', { implementId: randomUUID() }, 'NOT_FOUND', ['implementId']],
  ])('is refused with %s', async (_what, changes, code, path) => {
    const { tent } = await open();
    const { inspection, userErrors } = await tent.inspect(await tent.register(), 1000, changes);
    expect([inspection, codes(userErrors)]).toEqual([null, [[code, ['input', ...path]]]]);
  });

  it('for a competition is of an implement that is thrown in it', async () => {
    const { circle, tent } = await open();
    const competitionId = circle.competition.id;
    const light = await tent.register({ grams: 750 });
    expect((await tent.inspect(light, 752, { competitionId })).inspection.outcome).toBe('PASSED');
    for (const other of [{ grams: 1500 }, { event: 'SHOT', grams: 4000 }]) {
      const { userErrors } = await tent.inspect(await tent.register(other), 4000, { competitionId });
      expect(codes(userErrors)).toEqual([['NOT_OF_COMPETITION', ['input', 'competitionId']]]);
    }
  });
});
