import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { enterInJournal, attemptOf } from '../support/circle.js';
import { makeMeet, type MadeMeet } from '../support/made-meet.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

async function athlete(birthDate: string | null, sex = 'M'): Promise<string> {
  const { athleteCreate } = await api.data(
    'mutation ($input: AthleteCreateInput!) { athleteCreate(input: $input) { athlete { id } } }',
    { input: { givenName: 'Orsino', familyName: 'Maplethorpe', sex, birthDate } },
    api.adminToken,
  );
  return athleteCreate.athlete.id;
}

const ENTER = `mutation ($input: CompetitorEnterInput!) {
  competitorEnter(input: $input) {
    competitor { id implementGrams } isReplay notices { code message rule remedy } userErrors { code path message rule remedy }
  }
}`;

let bib = 0;
async function enter(meet: MadeMeet, input: object): Promise<any> {
  bib += 1;
  const given = { competitionId: meet.competitionId, bib: String(bib), ...input };
  return (await api.data(ENTER, { input: given }, meet.director)).competitorEnter;
}

async function define(input: object, token = api.adminToken): Promise<any> {
  const document = `mutation ($input: CategoryDefinitionAddInput!) {
    categoryDefinitionAdd(input: $input) {
      ageCategories { scheme rules isOwn validFrom validUntil ageOn ageOnDay categories { code minAge maxAge } source }
      isReplay userErrors { code path message remedy }
    }
  }`;
  const given = {
    ...{
      id: randomUUID(),
      scheme: 'Harbour juniors',
      ageOn: { kind: 'END_OF_YEAR' },
      source: 'Statutes of 2026',
    },
    ...{ bands: [{ code: 'U14', minAge: null, maxAge: 13 }], validFrom: '2026-01-01', ...input },
  };
  return (await api.data(document, { input: given }, token)).categoryDefinitionAdd;
}

const U18 = { categorySex: 'M', categoryAge: 'U18' };
const codesOf = (list: readonly any[]): string[] => list.map(({ code }) => code);

/** WA TR3: U18 are 16 and 17 on 31 December. Entering up and down: common practice, no published source. */
describe('entering a competition of a category', () => {
  it('takes who is of it without a word, with the implement of the category', async () => {
    const meet = await makeMeet(api, {}, U18);
    const { competitor, notices, userErrors } = await enter(meet, { athleteId: await athlete('2009-06-01') });
    expect([userErrors, notices, competitor.implementGrams]).toEqual([[], [], 1500]);
  });

  it('refuses who is too old, or of the other sex, with rule and remedy', async () => {
    const meet = await makeMeet(api, {}, U18);
    const old = await enter(meet, { athleteId: await athlete('2008-12-31') });
    expect(old).toEqual({
      ...{ competitor: null, isReplay: false, notices: [] },
      userErrors: [
        {
          ...{ code: 'TOO_OLD', path: ['input', 'athleteId'] },
          message: expect.stringContaining('U18') as string,
          rule: expect.stringContaining('WA TR3') as string,
          remedy: expect.stringContaining('guest') as string,
        },
      ],
    });
    expect(old.userErrors[0].message).not.toContain('2008');
    const other = await enter(meet, { athleteId: await athlete('2009-06-01', 'W') });
    expect(codesOf(other.userErrors)).toEqual(['OTHER_SEX']);
    const { competition } = await api.data(
      'query ($id: ID!) { competition(id: $id) { startList { id } } }',
      { id: meet.competitionId },
      meet.director,
    );
    expect(competition.startList).toEqual([]);
  });

  it('takes with a notice who is younger, whose age is not known, and guests', async () => {
    const meet = await makeMeet(api, {}, U18);
    const noticed = async (input: object) => {
      const { competitor, notices } = await enter(meet, input);
      return [competitor !== null, ...codesOf(notices)];
    };
    expect(await noticed({ athleteId: await athlete('2012-01-01') })).toEqual([true, 'OTHER_AGES']);
    expect(await noticed({ athleteId: await athlete(null) })).toEqual([true, 'AGE_UNKNOWN']);
    expect(await noticed({ listedName: 'Nobody Known' })).toEqual([true, 'AGE_UNKNOWN']);
    expect(await noticed({ athleteId: await athlete('1990-01-01'), isGuest: true })).toEqual([
      true,
      'TOO_OLD',
    ]);
    const open = await makeMeet(api);
    expect((await enter(open, { listedName: 'Nobody Known' })).notices).toEqual([]);
  });

  it('goes by the day on which the competition is held there, and by masters’ ages on that day', async () => {
    const masters = { rules: 'WMA', categorySex: 'M', categoryAge: '50', event: 'DISCUS' };
    // One in the morning in Lisbon, still the day before in New York.
    const startsAt = '2026-05-31T00:30:00Z';
    const fifty = await athlete('1976-05-31');
    const lisbon = await makeMeet(api, { timeZone: 'Europe/Lisbon' }, { ...masters, startsAt });
    const newYork = await makeMeet(api, { timeZone: 'America/New_York' }, { ...masters, startsAt });
    expect(codesOf((await enter(lisbon, { athleteId: fifty })).userErrors)).toEqual([]);
    expect(codesOf((await enter(newYork, { athleteId: fifty })).userErrors)).toEqual(['TOO_YOUNG']);
  });

  it('gives veterans who compete together each the implement of the own category', async () => {
    const together = { rules: 'WMA', categorySex: 'M', categoryAge: '35+' };
    const meet = await makeMeet(api, {}, together);
    const grams = async (birthDate: string, input: object = {}) =>
      (await enter(meet, { athleteId: await athlete(birthDate), ...input })).competitor.implementGrams;
    // Discus of men, WMA: 2 kg from 35, 1.5 kg from 50, 1 kg from 60, as in the tables.
    expect([await grams('1990-01-01'), await grams('1975-01-01'), await grams('1965-01-01')]).toEqual([
      2000, 1500, 1000,
    ]);
    expect(await grams('1965-01-01', { implementGrams: 1500 })).toBe(1500);
    const one = await makeMeet(api, {}, { ...together, implementGrams: 1750 });
    const entered = await enter(one, { athleteId: await athlete('1965-01-01') });
    expect(entered.competitor.implementGrams).toBeNull();
  });

  it('is answered alike when it is sent again', async () => {
    const meet = await makeMeet(api, {}, U18);
    const input = { id: randomUUID(), bib: '900', athleteId: await athlete('2012-01-01') };
    const first = await enter(meet, input);
    const again = await enter(meet, input);
    expect(again).toEqual({ ...first, isReplay: true });
  });
});

describe('age categories of a club', () => {
  const named = { categoryAge: 'U18', categoryScheme: 'Harbour eighteens' };
  const young = { scheme: 'Harbour eighteens', ageOn: { kind: 'DAY_OF_COMPETITION' } };

  it('count where a competition names them, while they are in force', async () => {
    await define({ ...young, bands: [{ code: 'U18', maxAge: 17 }] });
    const born = await athlete('2008-12-31');
    const meet = await makeMeet(api, {}, named);
    expect(codesOf((await enter(meet, { athleteId: born })).userErrors)).toEqual([]);
    const before = await makeMeet(api, { startsOn: '2025-06-01' }, named);
    expect(codesOf((await enter(before, { athleteId: born })).notices)).toEqual(['CATEGORY_UNKNOWN']);
    await define({ ...young, bands: [{ code: 'U18', maxAge: 16 }] });
    const later = await makeMeet(api, {}, named);
    expect(codesOf((await enter(later, { athleteId: born })).userErrors)).toEqual(['TOO_OLD']);
  });

  it('are listed with the built-in ones of a meet or a rule set', async () => {
    await define({ scheme: 'Harbour sevens', ageOn: { kind: 'NEXT', month: 8, day: 31 } });
    const meet = await makeMeet(api);
    const fields = '{ scheme isOwn ageOn ageOnDay isConfirmed categories { code minAge maxAge } }';
    const { ageCategories } = await api.data(
      `query ($meetId: ID!) { ageCategories(meetId: $meetId) ${fields} }`,
      { meetId: meet.meetId },
      meet.director,
    );
    expect(ageCategories).toContainEqual({
      ...{ scheme: 'Harbour sevens', isOwn: true, ageOn: 'NEXT', ageOnDay: '08-31', isConfirmed: true },
      categories: [{ code: 'U14', minAge: null, maxAge: 13 }],
    });
    expect(ageCategories.map(({ scheme }: any) => scheme)).toContain('WA');
    const byRules = await api.data(`{ ageCategories(rules: WMA, on: "2026-06-01") { scheme isOwn } }`);
    expect(byRules.ageCategories).toEqual([{ scheme: 'WMA', isOwn: false }]);
    const hidden = await api.data(`query ($id: ID!) { ageCategories(meetId: $id) { scheme } }`, {
      id: meet.meetId,
    });
    expect(hidden.ageCategories).toBeNull();
    for (const asked of ['', '(rules: WMA)', `(meetId: "${meet.competitionId}")`]) {
      const { errors } = await api.send(`{ ageCategories${asked} { scheme } }`);
      expect(errors?.[0]?.extensions.code).toBe('BAD_USER_INPUT');
    }
  });

  it('are refused with every problem, kept under their id, and laid down by an administrator alone', async () => {
    const bad = await define({
      validUntil: '2025-01-01',
      bands: [
        { code: 'A', minAge: 9, maxAge: 8 },
        { code: 'A', maxAge: 10 },
      ],
    });
    expect(bad.userErrors.map(({ code, path }: any) => `${code} ${path.slice(1).join('.')}`)).toEqual([
      'VALIDITY validUntil',
      'AGES bands.0.maxAge',
      'BAND_TWICE bands.1.code',
    ]);
    for (const ageOn of [
      { kind: 'NEXT' },
      { kind: 'NO_AGE', month: 1, day: 1 },
      { kind: 'NEXT', month: 2, day: 30 },
    ])
      expect(codesOf((await define({ ageOn })).userErrors)).toEqual(['DAY']);
    const id = randomUUID();
    const first = await define({ id });
    expect(await define({ id })).toEqual({ ...first, isReplay: true });
    expect(codesOf((await define({ id, source: 'elsewhere' })).userErrors)).toEqual(['ID_REUSED']);
    await expect(define({}, (await makeMeet(api)).director)).rejects.toThrow('FORBIDDEN');
  });
});

describe('the category of an athlete', () => {
  const CATEGORIES = `query { athletes(first: 100) { edges { node {
    birthDate categories(on: "2026-05-30", rules: WA) { scheme code age ageOn }
    veterans: categories(on: "2026-05-30", scheme: "WMA") { code age }
  } } } }`;

  it('is shown with the athlete, to those who may see the date of birth', async () => {
    await athlete('1980-05-31');
    const { athletes } = await api.data(CATEGORIES, {}, api.adminToken);
    const one = athletes.edges.find(({ node }: any) => node.birthDate === '1980-05-31').node;
    expect(one).toMatchObject({
      categories: [{ scheme: 'WA', code: 'senior', age: 46, ageOn: '2026-12-31' }],
      veterans: [{ code: '45', age: 45 }],
    });
    const { errors } = await api.send(CATEGORIES);
    expect(errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
    const which = await api.send(
      '{ athletes(first: 1) { edges { node { categories(on: "2026-05-30") { code } } } } }',
      {},
      api.adminToken,
    );
    expect(which.errors?.[0]?.extensions.code).toBe('BAD_USER_INPUT');
  });

  it('is on the list of those who call, and on no other', async () => {
    const meet = await makeMeet(api, {}, { rules: 'WMA', categoryAge: '35+', categorySex: 'M' });
    await enter(meet, { athleteId: await athlete('1980-05-30') });
    const list = 'query ($id: ID!) { competition(id: $id) { callList { category } } }';
    const official = await api.token('official', meet.competitionId);
    const { competition } = await api.data(list, { id: meet.competitionId }, official);
    expect(competition.callList).toEqual([{ category: '45' }]);
    await api.data(
      'mutation ($id: ID!) { meetPublish(input: { meetId: $id }) { meet { id } } }',
      { id: meet.meetId },
      meet.director,
    );
    const { errors } = await api.send(list, { id: meet.competitionId });
    expect(errors?.[0]?.extensions.code).toBe('UNAUTHENTICATED');
  });
});

describe('age factors', () => {
  const SET = `mutation ($input: AgeFactorsSetInput!) {
    ageFactorsSet(input: $input) { event revision userErrors { code path } }
  }`;
  const LIST = `query ($id: ID!) { competition(id: $id) {
    table { rows { bib place } }
    ageGraded { source remark rows { bib name category mark graded place isEqual } }
  } }`;

  async function veterans(): Promise<MadeMeet> {
    const meet = await makeMeet(api, {}, { rules: 'WMA', categoryAge: '35+', categorySex: 'M' });
    const field = [
      ['1', '1990-01-01', '40.00'],
      ['2', '1975-01-01', '36.00'],
      ['3', null, '41.00'],
    ] as const;
    const entered: string[] = [];
    for (const [number, birthDate] of field) {
      const { competitor } = await enter(meet, { bib: number, athleteId: await athlete(birthDate) });
      entered.push(competitor.id);
    }
    for (const [at, [, , cell]] of field.entries()) {
      await enterInJournal(api, meet.director, 'attemptRecord', {
        ...{ competitionId: meet.competitionId, competitorId: entered[at], round: 1, ...attemptOf(cell) },
      });
    }
    await api.data(
      'mutation ($id: ID!) { meetPublish(input: { meetId: $id }) { meet { id } } }',
      { id: meet.meetId },
      meet.director,
    );
    return meet;
  }

  const set = async (meet: MadeMeet, input: object, token = meet.director): Promise<any> => {
    const given = { meetId: meet.meetId, event: 'DISCUS', source: 'Made up for a test, 2026', ...input };
    return (await api.data(SET, { input: given }, token)).ageFactorsSet;
  };
  const read = async (meet: MadeMeet, token: string | null = null): Promise<any> =>
    (await api.data(LIST, { id: meet.competitionId }, token)).competition;

  it('make a list beside the places, once somebody has entered them', async () => {
    const meet = await veterans();
    expect((await read(meet)).ageGraded).toBeNull();
    const factors = [
      { sex: 'M', age: '35', factor: '1.01' },
      { sex: 'M', age: '50', factor: '1.25' },
    ];
    expect(await set(meet, { factors })).toEqual({ event: 'DISCUS', revision: 1, userErrors: [] });
    const { table, ageGraded } = await read(meet);
    expect(table.rows.map((row: any) => `${row.place} ${row.bib}`)).toEqual(['1 3', '2 1', '3 2']);
    expect(ageGraded).toMatchObject({
      source: 'Made up for a test, 2026',
      remark: expect.stringContaining('no place') as string,
      rows: [
        {
          bib: '2',
          name: 'Orsino Maplethorpe',
          category: '50',
          mark: '36.00',
          graded: '45.00',
          place: 1,
          isEqual: false,
        },
        {
          bib: '1',
          name: 'Orsino Maplethorpe',
          category: '35',
          mark: '40.00',
          graded: '40.40',
          place: 2,
          isEqual: false,
        },
      ],
    });
    expect(await set(meet, { factors: [] })).toMatchObject({ revision: 2 });
    expect((await read(meet)).ageGraded).toBeNull();
  });

  it('for each year of age are not shown to the public, which could tell the age', async () => {
    const meet = await veterans();
    await set(meet, { factors: [{ sex: 'M', age: '51', factor: '1.5' }] });
    expect((await read(meet)).ageGraded).toBeNull();
    expect((await read(meet, meet.director)).ageGraded.rows).toMatchObject([{ bib: '2', graded: '54.00' }]);
  });

  it('are refused with every problem, and entered by a director of the meet alone', async () => {
    const meet = await makeMeet(api);
    const line = { sex: 'M', age: '50', factor: '1.2' };
    const { userErrors } = await set(meet, { factors: [line, line, { ...line, age: '55', factor: '0' }] });
    expect(userErrors).toEqual([
      { code: 'DUPLICATE', path: ['input', 'factors', '1', 'age'] },
      { code: 'FACTOR', path: ['input', 'factors', '2', 'factor'] },
    ]);
    expect((await set(meet, { factors: [{ ...line, sex: 'X' }] })).userErrors).toMatchObject([
      { code: 'SEX' },
    ]);
    await expect(set(meet, { factors: [line] }, (await makeMeet(api)).director)).rejects.toThrow('FORBIDDEN');
  });
});
