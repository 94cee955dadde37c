import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { makeMeet, type MadeMeet } from '../support/made-meet.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const IMPORT = `mutation ($input: EntriesImportInput!) { entriesImport(input: $input) {
  entries { line name club isNewAthlete bib seedMark }
  entryCount newAthleteCount newClubCount
  athleteQuestions { line name isDecided candidates { line why athlete { id familyName } } }
  clubQuestions { line name isDecided candidates { id name } }
  fingerprint needsReason isStored isReplay
  userErrors { code path message remedy ... on CsvFault { line column } }
} }`;
const LIST = `query ($id: ID!) { competition(id: $id) {
  version callList { name seedMark competitor { bib club flight isGuest } }
} }`;

async function imported(meet: MadeMeet, text: string, input: object = {}): Promise<any> {
  const variables = { input: { meetId: meet.meetId, csv: { text }, ...input } };
  return (await api.data(IMPORT, variables, meet.director)).entriesImport;
}

const looked = (meet: MadeMeet, text: string, input: object = {}): Promise<any> =>
  imported(meet, text, { isDryRun: true, ...input });

/** Looks at the table and stores it as it is decided. */
async function stored(meet: MadeMeet, text: string, decisions: object = {}): Promise<any> {
  const { fingerprint } = await looked(meet, text);
  return imported(meet, text, { fingerprint, ...decisions });
}

async function list(meet: MadeMeet): Promise<any> {
  return (await api.data(LIST, { id: meet.competitionId }, meet.director)).competition;
}

async function made(document: string, input: object): Promise<any> {
  return Object.values<any>(await api.data(document, { input }, api.adminToken))[0];
}

async function onRecord(athlete: object): Promise<string> {
  const create =
    'mutation ($input: AthleteCreateInput!) { athleteCreate(input: $input) { athlete { id } userErrors { code } } }';
  return (await made(create, { sex: 'W', ...athlete })).athlete.id;
}

const faults = ({ userErrors }: any): string[] =>
  userErrors.map(({ code, line, column }: any) => `${line} ${column} ${code}`);

describe('entries from a table', () => {
  it('come in as a whole once they were looked at, with athletes and clubs that are new', async () => {
    const meet = await makeMeet(api);
    const family = `Quill${randomUUID().slice(0, 8)}`;
    const text = [
      'Competition;family_name;given_name;sex;born;club;bib;seed_mark;guest;listed_name',
      `discus women;${family};Maud;W;1999-02-11;Brook Lane ${family};7;41.20;;`,
      `Discus Women;${family};Ingrid;W;2001-07-30;Brook Lane ${family};;;yes;`,
      'DISCUS WOMEN;;;;;Far Away AC;;;;Bo Lindqvist',
    ].join('\r\n');
    const dry = await looked(meet, text);
    expect(faults(dry)).toEqual([]);
    expect(dry.clubQuestions.map(({ name, line, isDecided }: any) => [name, line, isDecided])).toEqual([
      [`Brook Lane ${family}`, 2, false],
      ['Far Away AC', 4, false],
    ]);
    expect([dry.isStored, dry.entries.map(({ bib }: any) => bib)]).toEqual([false, ['7', '8', '9']]);
    expect((await list(meet)).callList).toEqual([]);
    const clubs = [
      { name: `Brook Lane ${family}`, choice: 'NEW' },
      { name: 'Far Away AC', choice: 'AS_WRITTEN' },
    ];
    expect(faults(await stored(meet, text))).toEqual(['2 club DECISION_MISSING', '4 club DECISION_MISSING']);
    const id = randomUUID();
    const done = await stored(meet, text, { id, clubs });
    expect(faults(done)).toEqual([]);
    expect([done.isStored, done.entryCount, done.newAthleteCount, done.newClubCount]).toEqual([
      true,
      3,
      2,
      1,
    ]);
    expect(await list(meet)).toEqual({
      version: 1,
      callList: [
        {
          ...{ name: `Maud ${family}`, seedMark: '41.20' },
          competitor: { bib: '7', club: `Brook Lane ${family}`, flight: null, isGuest: false },
        },
        {
          ...{ name: `Ingrid ${family}`, seedMark: null },
          competitor: { bib: '8', club: `Brook Lane ${family}`, flight: null, isGuest: true },
        },
        {
          ...{ name: 'Bo Lindqvist', seedMark: null },
          competitor: { bib: '9', club: 'Far Away AC', flight: null, isGuest: false },
        },
      ],
    });
    const { fingerprint } = dry;
    const again = await imported(meet, text, { id, clubs, fingerprint });
    expect([again.isReplay, again.isStored, again.entryCount, again.userErrors]).toEqual([true, true, 3, []]);
    const other = await imported(meet, text, { id, clubs, fingerprint, reason: 'another' });
    expect(other.userErrors.map(({ code }: any) => code)).toEqual(['ID_REUSED']);
    expect((await list(meet)).version).toBe(1);
  });

  it('tell every problem by line and column, and nothing of them is stored', async () => {
    const meet = await makeMeet(api, {}, { categorySex: 'W' });
    const family = `Sedge${randomUUID().slice(0, 8)}`;
    const man = await onRecord({ givenName: 'Tor', familyName: family, sex: 'M' });
    const text = [
      'competition,athlete,family_name,given_name,born,bib,seed_mark,listed_name',
      `Discus women,${man},,,,1,,`,
      `Hammer women,,${family},Ada,2000-01-02,,,`,
      `Discus women,,${family},,2000-01-02,,,`,
      `Discus women,,${family},Ines,2000-01-03,1,47-06.25,`,
      `Discus women,,${family},Ines,2000-01-04,,=1+1,`,
      'Discus women,,,,,,,',
    ].join('\n');
    expect(faults(await looked(meet, text))).toEqual(['6 seed_mark CELL']);
    const rest = text.replace('=1+1', '41.00');
    expect(faults(await looked(meet, rest))).toEqual([
      '3 competition COMPETITION_UNKNOWN',
      '5 seed_mark WRONG_UNIT',
      '7 family_name NAME_INCOMPLETE',
    ]);
    const last = rest
      .replace('Hammer', 'Discus')
      .replace('47-06.25', '')
      .replace(/\n[^\n]*$/, '');
    expect(faults(await looked(meet, last))).toEqual([
      '2 family_name OTHER_SEX',
      '4 given_name NAME_INCOMPLETE',
    ]);
    const twice = `competition,family_name,given_name,born\n${`Discus women,${family},Ada,2000-01-02\n`.repeat(2)}`;
    expect(faults(await looked(meet, twice))).toEqual(['3 family_name ALREADY_ENTERED']);
    expect(faults(await stored(meet, twice))).toEqual(['3 family_name ALREADY_ENTERED']);
    expect((await list(meet)).callList).toEqual([]);
    const { athletes } = await api.data(
      '{ athletes(first: 100) { edges { node { familyName } } } }',
      {},
      api.adminToken,
    );
    expect(athletes.edges.filter(({ node }: any) => node.familyName === family)).toHaveLength(1);
  });

  it('ask who is whom, on record and further up, and hold to what was decided', async () => {
    const meet = await makeMeet(api);
    const family = `Ravenmoor${randomUUID().slice(0, 6)}`;
    const known = await onRecord({ givenName: 'Tamsin', familyName: family, birthDate: '1999-02-11' });
    const text = [
      'competition,family_name,given_name,sex,born,bib',
      `Discus women,${family},Tamsyn,W,1999-02-11,1`,
      `Discus women,${family},Elske,W,2003-03-03,2`,
      `Discus women,${family}s,Elske,W,2003-03-03,3`,
    ].join('\n');
    const dry = await looked(meet, text);
    expect(dry.athleteQuestions).toEqual([
      {
        ...{ line: 2, name: `Tamsyn ${family}`, isDecided: false },
        candidates: [{ line: null, why: 'SIMILAR_NAME', athlete: { id: known, familyName: family } }],
      },
      {
        ...{ line: 4, name: `Elske ${family}s`, isDecided: false },
        candidates: [{ line: 3, why: 'SIMILAR_NAME', athlete: null }],
      },
    ]);
    const { fingerprint } = dry;
    const athletes = [
      { line: 2, choice: 'SAME', athleteId: known },
      { line: 4, choice: 'NEW' },
    ];
    const same = { line: 4, choice: 'SAME', sameLine: 3 };
    const twice = await imported(meet, text, { fingerprint, athletes: [athletes[0], same] });
    expect(faults(twice)).toEqual(['4 family_name ALREADY_ENTERED']);
    const nobody = await imported(meet, text, { fingerprint, athletes: [athletes[1], { ...same, line: 2 }] });
    expect(faults(nobody)).toEqual(['2 null NO_CANDIDATE']);
    const idle = await looked(meet, text, { athletes: [{ line: 3, choice: 'NEW' }] });
    expect(faults(idle)).toEqual(['3 null NOT_ASKED']);
    expect((await imported(meet, text, { athletes })).userErrors[0].code).toBe('FINGERPRINT_MISSING');
    await made(
      'mutation ($input: AthleteUpdateInput!) { athleteUpdate(input: $input) { userErrors { code } } }',
      { athleteId: known, birthDate: '1998-02-11' },
    );
    const late = await imported(meet, text, { fingerprint, athletes });
    expect(late.userErrors.map(({ code, path }: any) => [code, path.at(-1)])).toEqual([
      ['CHANGED_SINCE', 'fingerprint'],
    ]);
    const done = await stored(meet, text, { athletes });
    expect([faults(done), done.newAthleteCount]).toEqual([[], 2]);
    expect((await list(meet)).callList.map(({ name }: any) => name)).toEqual([
      ...[`Tamsin ${family}`, `Elske ${family}`, `Elske ${family}s`],
    ]);
  });
});

const PAST = `mutation ($input: PastResultsImportInput!) { pastResultsImport(input: $input) {
  pastResults { line name isNewAthlete event mark wind isIndoor implementGrams onDate meetName place }
  resultCount newAthleteCount fingerprint isStored isReplay
  athleteQuestions { line candidates { why } }
  userErrors { code ... on CsvFault { line column } }
} }`;
const HISTORY = `query ($id: ID!) { athlete(id: $id) {
  pastResults(first: 10) { edges { node { id event mark wind onDate meetName place source } } }
  bests { kind event best { mark source pastResult place startingMark } }
} }`;

describe('results of seasons past from a table', () => {
  const past = async (text: string, input: object = {}): Promise<any> => {
    const variables = { input: { source: 'results lists of the club', csv: { text }, ...input } };
    return (await api.data(PAST, variables, api.adminToken)).pastResultsImport;
  };

  it('are history and bests of the athlete, with who says so, for those who may see the athlete', async () => {
    const familyName = `Fenwick${randomUUID().slice(0, 8)}`;
    const athlete = await onRecord({ givenName: 'Isla', familyName, birthDate: '2001-05-14' });
    const text = [
      'family_name;given_name;born;date;meet;event;mark;wind;implement_g;place;indoor',
      `${familyName};Isla;2001-05-14;2019-06-08;Mill Field Evening;discus;44.10;;1000;2;`,
      `${familyName.toUpperCase()};ISLA;2001-05-14;2020-07-11;Open Day;Long Jump;5.61;1.3;;;`,
      `${familyName};Isla;2001-05-14;2021-02-20;Hall meet;long-jump;5.64;;;1;yes`,
    ].join('\r\n');
    const dry = await past(text, { isDryRun: true });
    expect([dry.userErrors, dry.athleteQuestions, dry.resultCount]).toEqual([[], [], 3]);
    const id = randomUUID();
    const done = await past(text, { id, fingerprint: dry.fingerprint });
    expect([done.userErrors, done.isStored, done.newAthleteCount]).toEqual([[], true, 0]);
    expect(await past(text, { id, fingerprint: dry.fingerprint })).toMatchObject({
      isReplay: true,
      resultCount: 3,
    });
    expect(faults(await past(text, { isDryRun: true }))).toEqual(
      [2, 3, 4].map((line) => `${line} null KNOWN_ALREADY`),
    );
    const coach = await api.token('coach', athlete);
    const shown = (await api.data(HISTORY, { id: athlete }, coach)).athlete;
    expect(
      shown.pastResults.edges.map(({ node: { event, mark, wind, place } }: any) => [
        event,
        mark,
        wind,
        place,
      ]),
    ).toEqual([
      ['LONG_JUMP', '5.64', null, 1],
      ['LONG_JUMP', '5.61', '+1.3', null],
      ['DISCUS', '44.10', null, 2],
    ]);
    const personal = shown.bests.filter(({ kind }: any) => kind === 'PERSONAL_BEST');
    expect(
      personal.map(({ event, best }: any) => [event, best[0].mark, best[0].source, best[0].place]),
    ).toContainEqual(['DISCUS', '44.10', 'results lists of the club', 'Mill Field Evening']);
    const [, , { node: discus }] = shown.pastResults.edges;
    const withdraw = `mutation ($input: PastResultWithdrawInput!) { pastResultWithdraw(input: $input) {
      pastResult { mark } isReplay userErrors { code } } }`;
    const wrong = { input: { id: randomUUID(), replacesId: discus.id, reason: 'of her sister' } };
    const first = (await api.data(withdraw, wrong, api.adminToken)).pastResultWithdraw;
    const again = (await api.data(withdraw, wrong, api.adminToken)).pastResultWithdraw;
    expect([first.userErrors, again.isReplay]).toEqual([[], true]);
    const left = (await api.data(HISTORY, { id: athlete }, coach)).athlete;
    expect([left.pastResults.edges.length, left.bests.some(({ event }: any) => event === 'DISCUS')]).toEqual([
      2,
      false,
    ]);
    await expect(
      api.data(
        HISTORY,
        { id: athlete },
        await api.token('coach', await onRecord({ givenName: 'A', familyName })),
      ),
    ).rejects.toThrow();
  });

  it('tell what a mark cannot be without, and who is meant', async () => {
    const familyName = `Oakes${randomUUID().slice(0, 8)}`;
    const text = [
      'family_name,given_name,date,meet,event,mark,wind,implement_g,sex',
      `${familyName},Ada,2019-06-08,Open,discus,44.10,,,W`,
      `${familyName},Ada,2019-06-08,Open,triple-jump,12.10,,,W`,
      `${familyName},Ada,2999-06-08,Open,high-jump,1.71,+1.3,,W`,
    ].join('\n');
    expect(faults(await past(text, { isDryRun: true }))).toEqual([
      '2 implement_g IMPLEMENT_MISSING',
      '3 wind WIND_MISSING',
      '4 wind WIND_NOT_EXPECTED',
      '4 date NOT_YET',
    ]);
    const nobody = `family_name,given_name,date,meet,event,mark\n${familyName},Ada,2019-06-08,Open,high-jump,1.71`;
    expect(faults(await past(nobody, { isDryRun: true }))).toEqual(['2 sex SEX_MISSING']);
  });
});
