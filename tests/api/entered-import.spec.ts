import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { staffedMeet, type StaffedMeet } from '../support/circle.js';

const IMPORT = `mutation ($input: EnteredResultsImportInput!) { enteredResultsImport(input: $input) {
  results { id title isRelay categorySex categoryAge lines { bib club place status time wind } }
  isReplay
  userErrors { code path message remedy ... on CsvFault { line column } }
} }`;

const READ = `query ($id: ID!) { meet(id: $id) {
  enteredResults { title }
  clubTable { combined { place club points } competitions { lines { bib } } enteredResults { result { title } } }
} }`;

const TABLE = `event;relay;sex;age;place;status;bib;club;time;wind
100 m;;W;U18;1;;11;Heron;12.04;+1.3
4 x 100 m;yes;W;;2;;;Heron;49.20;
100 m;;W;U18;2;;12;Otter;12.1;nwi
100 m;;W;U18;;dnf;13;;;
4 x 100 m;yes;W;;1;;Otter A;Otter;48.75;
`;

describe('a table of entered results', () => {
  let api: TestApi;
  let meet: StaffedMeet;

  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.close());
  beforeEach(async () => {
    meet = await staffedMeet(api);
    await api.data(
      `mutation ($id: ID!) { meetScoringSet(input: { meetId: $id, preset: DUAL }) { userErrors { code } } }`,
      { id: meet.id },
      meet.director,
    );
  });

  async function take(text: string, changes: object = {}, token = meet.referee): Promise<any> {
    const input = { meetId: meet.id, csv: { text }, ...changes };
    return (await api.data(IMPORT, { input }, token)).enteredResultsImport;
  }

  async function read(): Promise<any> {
    return (await api.data(READ, { id: meet.id })).meet;
  }

  const problems = ({ userErrors }: any): unknown[] =>
    userErrors.map(({ code, line, column }: any) => [code, line, column]);

  it('becomes results, which count for the clubs as entered ones', async () => {
    const { results, userErrors } = await take(TABLE);
    expect(userErrors).toEqual([]);
    expect(results).toEqual([
      {
        ...{ id: expect.any(String) as string, title: '100 m', isRelay: false },
        ...{ categorySex: 'W', categoryAge: 'U18' },
        lines: [
          { bib: '11', club: 'Heron', place: 1, status: null, time: '12.04', wind: '+1.3' },
          { bib: '12', club: 'Otter', place: 2, status: null, time: '12.1', wind: 'NWI' },
          { bib: '13', club: null, place: null, status: 'DNF', time: null, wind: null },
        ],
      },
      {
        ...{ id: expect.any(String) as string, title: '4 x 100 m', isRelay: true },
        ...{ categorySex: 'W', categoryAge: null },
        lines: [
          { bib: 'Otter A', club: 'Otter', place: 1, status: null, time: '48.75', wind: null },
          { bib: 'Heron', club: 'Heron', place: 2, status: null, time: '49.20', wind: null },
        ],
      },
    ]);
    const { clubTable } = await read();
    // 5-3-1, and 5-0 to relays.
    expect(clubTable.combined).toEqual([
      { place: 1, club: 'Otter', points: '8' },
      { place: 2, club: 'Heron', points: '5' },
    ]);
    expect(clubTable.competitions).toEqual([]);
    expect(clubTable.enteredResults.map(({ result }: any) => result.title)).toEqual(['100 m', '4 x 100 m']);
  });

  it('is tried first, stored once, and answered when it is sent again', async () => {
    const id = randomUUID();
    const tried = await take(TABLE, { id, isDryRun: true });
    expect(tried.results).toHaveLength(2);
    expect((await read()).enteredResults).toEqual([]);
    const both = await Promise.all([take(TABLE, { id }), take(TABLE, { id })]);
    expect(both.map(({ isReplay }) => isReplay as boolean).sort()).toEqual([false, true]);
    expect(both[0].results).toEqual(both[1].results);
    expect(both[0].results).toEqual(tried.results);
    expect((await read()).enteredResults).toHaveLength(2);
    expect(await take(TABLE.replace('12.04', '12.05'), { id })).toMatchObject({
      results: [],
      userErrors: [{ code: 'ID_REUSED' }],
    });
    expect(problems(await take(TABLE))).toEqual([
      ['ENTERED_ALREADY', 2, 'event'],
      ['ENTERED_ALREADY', 3, 'event'],
    ]);
  });

  it('is refused with every problem by line and column, and nothing of it is kept', async () => {
    const table = `event,relay,sex,place,status,bib,club,time
100 m,,W,1,,11,Heron,12.04
100 m,,W,3,,12,Otter,12.10
100 m,,W,3,DQ,12,Otter,
100 m,yes,W,,,,,
,,W,1,,1,,
200 m,,W,0,,1,,9:99
`;
    const answer = await take(table);
    expect(answer.results).toEqual([]);
    expect(problems(answer)).toEqual([
      ['CELL_EMPTY', 6, 'event'],
      ['CELL', 7, 'place'],
      ['CELL', 7, 'time'],
    ]);
    expect(problems(await take(table.split('\n').slice(0, 5).join('\n')))).toEqual([
      ['PLACES', 3, 'place'],
      ['BIB_TWICE', 4, 'bib'],
      ['PLACE_OR_STATUS', 4, 'place'],
      ['PLACES', 4, 'place'],
      ['RELAY_OR_NOT', 5, 'relay'],
      ['BIB_MISSING', 5, 'bib'],
      ['PLACE_OR_STATUS', 5, 'place'],
    ]);
    expect((await read()).enteredResults).toEqual([]);
  });

  it.each([
    ['no text', { csv: {} }, ['CSV_MISSING', undefined, undefined]],
    ['no line', { csv: { text: 'event,place' } }, ['NO_LINES', 1, null]],
    ['a name', { csv: { text: 'event,place,name\n100 m,1,Mira Tolve' } }, ['UNKNOWN_COLUMN', 1, 'name']],
    [
      'more lines than a result has',
      {
        csv: {
          text: `event,place,bib\n${Array.from({ length: 201 }, (_, at) => `100 m,1,${at}\n`).join('')}`,
        },
      },
      ['TOO_MANY_IN_RESULT', 202, 'event'],
    ],
  ])('is not %s', async (_what, changes, problem) => {
    expect(problems(await take('', changes))).toEqual([problem]);
  });

  it('is for those who run the meet', async () => {
    const other = await staffedMeet(api);
    for (const token of [other.director, null]) {
      const { errors } = await api.send(IMPORT, { input: { meetId: meet.id, csv: { text: TABLE } } }, token);
      expect(errors?.[0]?.extensions.code).toBe(token === null ? 'UNAUTHENTICATED' : 'FORBIDDEN');
    }
  });
});
