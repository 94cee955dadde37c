import { normaliseSheet, recount } from '#rules';
import { partOf, readCases } from '../cases/read-cases.js';
import { startApi, type TestApi } from '../support/api.js';
import { staffedCompetition, staffedMeet, type StaffedMeet } from '../support/circle.js';
import { CardEntry } from '../support/card-entry.js';

/*
 * The same answers to the letter through three doors: the library, a sheet taken in as a whole, and the entries that
 * an official makes one by one. The command line is the fourth, tested beside it.
 */
const cases = readCases().filter(([, { sheet }]) => sheet.format === 'sectorline-sheet/1');
const meets = readCases().filter(([, { sheet }]) => sheet.format === 'sectorline-meet/1');
const valid = cases.filter(([, { expect: expected }]) => !(expected.problems?.length > 0));
const invalid = cases.filter(([, { expect: expected }]) => expected.problems?.length > 0);

const IMPORT = `mutation ($input: SheetImportInput!) {
  sheetImport(input: $input) {
    competitions { id sheet }
    isReplay
    competition { id sheet result table { rows { bib place isEqual mark wind isWindLegal windLegalMark status decidedBy qualified } } }
    userErrors { code message path ... on SheetProblem { pointer } }
  }
}`;

let api: TestApi;
let meet: StaffedMeet;
beforeAll(async () => {
  api = await startApi();
  meet = await staffedMeet(api);
});
afterAll(() => api.close());

async function importSheet(sheet: object): Promise<any> {
  const input = { meetId: meet.id, title: 'Case', sheet };
  return (await api.data(IMPORT, { input }, meet.director)).sheetImport;
}

/**
 * A table's row in the words of a result document, which takes a card to be whole: who has no mark and may still go on
 * is `NM` there, and in a table without a status so far.
 */
function asResultRow({ isEqual: equal, isWindLegal: windLegal, status, ...row }: any): object {
  const isWaiting = status === null && row.place === null;
  return { ...row, equal, windLegal, status: isWaiting ? 'NM' : status };
}

it('there are cases to try', () => {
  const vertical = valid.filter(([, { sheet }]) => sheet.heights);
  expect(vertical.length).toBeGreaterThan(20);
  expect(valid.length - vertical.length).toBeGreaterThan(35);
  expect(invalid.length).toBeGreaterThan(2);
  expect(meets.length).toBeGreaterThan(3);
});

describe('a sheet taken in as a whole', () => {
  it.each(valid)('%s', async (_name, { sheet, expect: expected }) => {
    const { competition, userErrors } = await importSheet(sheet);
    expect(userErrors).toEqual([]);
    expect(partOf(competition.result, expected)).toEqual(expected);
    expect(competition.result).toEqual(JSON.parse(JSON.stringify(recount(JSON.stringify(sheet)))));
    expect(normaliseSheet(competition.sheet)).toEqual(normaliseSheet(sheet));
    if (!expected.results) return;
    const rows = expected.results.map(({ points: _points, ...row }: any) => row);
    expect(partOf(competition.table.rows.map(asResultRow), rows)).toEqual(rows);
  });
});

describe('a sheet of a whole meet', () => {
  const MEET = `query ($id: ID!) { meet(id: $id) {
    sheet result clubTable { combined { place club points } competitions { competition { id stage } } }
  } }`;

  async function importMeet(own: StaffedMeet, sheet: object, title = 'Meet'): Promise<any> {
    const input = { meetId: own.id, title, sheet };
    return (await api.data(IMPORT, { input }, own.director)).sheetImport;
  }

  it.each(meets)('%s', async (_name, { sheet, expect: expected }) => {
    const own = await staffedMeet(api);
    const { competition, competitions, isReplay, userErrors } = await importMeet(own, sheet);
    expect([competition, isReplay, userErrors]).toEqual([null, false, []]);
    expect(competitions.map(({ sheet: one }: any) => normaliseSheet(one))).toEqual(
      sheet.sheets.map((one: any) => normaliseSheet(one)),
    );
    const { meet: read } = await api.data(MEET, { id: own.id }, own.referee);
    expect(partOf(read.result, expected)).toEqual(expected);
    expect(read.result).toEqual(JSON.parse(JSON.stringify(recount(JSON.stringify(sheet)))));
    expect(normaliseSheet(read.sheet)).toEqual(normaliseSheet(sheet));
    const again = await importMeet(own, sheet);
    expect(again).toMatchObject({ isReplay: true, userErrors: [] });
    expect(again.competitions.map(({ id }: any) => id)).toEqual(competitions.map(({ id }: any) => id));
    if (!sheet.sheets.every(({ stage = 'final' }: any) => stage === 'final')) return;
    // The club table leaves out clubs that have nobody but guests.
    const scored = new Set(read.clubTable.combined.map(({ club }: any) => club));
    expect(read.clubTable.combined).toEqual(expected.clubs.filter(({ club }: any) => scored.has(club)));
    expect(expected.clubs.every(({ club, points }: any) => scored.has(club) || points === '0')).toBe(true);
  });

  it('is for a meet that is empty, and for those who run it', async () => {
    const [, { sheet }] = meets[0]!;
    const own = await staffedMeet(api);
    expect((await api.data(MEET, { id: own.id }, own.director)).meet).toMatchObject({
      sheet: null,
      result: null,
    });
    await importMeet(own, sheet);
    const refused = await importMeet(own, sheet, 'Another');
    expect(refused).toMatchObject({ competitions: [], userErrors: [{ code: 'MEET_NOT_EMPTY' }] });
    expect((await api.data(MEET, { id: own.id }, null)).meet).toMatchObject({ sheet: null, result: null });
    expect((await importMeet(own, { ...sheet, sheets: [] })).userErrors).toMatchObject([
      { code: 'MEET_NOT_EMPTY' },
    ]);
  });

  it('is refused with every problem, and with too many sheets', async () => {
    const own = await staffedMeet(api);
    const [, { sheet }] = meets[0]!;
    const one = { ...sheet.sheets[0], colour: 'blue' };
    const { competitions, userErrors } = await importMeet(own, { ...sheet, sheets: [one, 7] });
    expect(competitions).toEqual([]);
    expect(userErrors.map(({ pointer, code }: any) => [pointer, code])).toEqual([
      ['/sheets/0/colour', 'UNKNOWN_KEY'],
      ['/sheets/1', 'WRONG_TYPE'],
    ]);
    const empty = { format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', competitors: [] };
    const many = { ...sheet, sheets: Array.from({ length: 201 }, () => empty) };
    expect((await importMeet(own, many)).userErrors).toMatchObject([
      { code: 'TOO_LARGE', pointer: '/sheets' },
    ]);
  });
});

describe('a sheet that is not valid is refused with the same problems', () => {
  it.each(invalid)('%s', async (_name, { sheet, expect: expected }) => {
    const { competition, userErrors } = await importSheet(sheet);
    expect(competition).toBeNull();
    const problems = userErrors.map(({ pointer: path, code }: any) => ({ path, code }));
    expect(partOf(problems, expected.problems)).toEqual(expected.problems);
  });
});

/** A start list has no mark that could say it. */
function unitOf(sheet: any): 'CM' | 'QIN' {
  return /"\d+-\d\d\.\d\d/.test(JSON.stringify(sheet)) ? 'QIN' : 'CM';
}

/** The card before anything happened. */
function startList(sheet: any): object {
  const { admitted: _admitted, jumpOff: _jumpOff, ...rest } = sheet;
  const competitors = sheet.competitors.map(
    ({ series: _series, status: _status, ...competitor }: any) => competitor,
  );
  return { ...rest, competitors };
}

describe('entries made one by one', () => {
  it.each(valid)('%s', async (_name, { sheet, expect: expected }) => {
    const competition = await staffedCompetition(api, meet, startList(sheet), unitOf(sheet));
    const standings = await new CardEntry(api, meet, competition).enter(sheet);
    expect(standings.filter((standing) => standing !== 'ACCEPTED')).toEqual([]);
    const { competition: read } = await api.data(
      `query ($id: ID!) { competition(id: $id) { sheet result } }`,
      { id: competition.id },
      meet.director,
    );
    expect(partOf(read.result, expected)).toEqual(expected);
    expect(normaliseSheet(read.sheet)).toEqual(normaliseSheet(sheet));
  });
});
