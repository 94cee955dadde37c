import { normaliseSheet, recount } from '#rules';
import { partOf, readCases } from '../cases/read-cases.js';
import { startApi, type TestApi } from '../support/api.js';
import {
  attemptOf,
  enterInJournal,
  staffedCompetition,
  staffedMeet,
  type StaffedCompetition,
  type StaffedMeet,
} from '../support/circle.js';

/*
 * The same answers to the letter through three doors: the library, a sheet taken in as a whole, and the entries that
 * an official makes one by one. The command line is the fourth, tested beside it.
 */
const distance = readCases().filter(
  ([, { sheet }]) => sheet.format === 'sectorline-sheet/1' && !sheet.heights,
);
const valid = distance.filter(([, { expect: expected }]) => !(expected.problems?.length > 0));
const invalid = distance.filter(([, { expect: expected }]) => expected.problems?.length > 0);

const IMPORT = `mutation ($input: SheetImportInput!) {
  sheetImport(input: $input) {
    competition { id sheet result table { rows { bib place isEqual mark wind isWindLegal windLegalMark status decidedBy qualified } } }
    userErrors { code message ... on SheetProblem { pointer } }
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

/** A table's row in the words of a result document. */
function asResultRow(row: any): object {
  const { isEqual: equal, isWindLegal: windLegal, ...rest } = row;
  return { ...rest, equal, windLegal };
}

it('there are cases to try', () => {
  expect(valid.length).toBeGreaterThan(35);
  expect(invalid.length).toBeGreaterThan(2);
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
  const { admitted: _admitted, ...rest } = sheet;
  const competitors = sheet.competitors.map(
    ({ series: _series, status: _status, ...competitor }: any) => competitor,
  );
  return { ...rest, competitors };
}

/** Enters what a card says as it happened: round by round, disqualifications when a series ends, then who is admitted. */
async function enterCard(sheet: any, competition: StaffedCompetition): Promise<string[]> {
  const competitionId = competition.id;
  const standings: string[] = [];
  const send = async (token: string, mutation: string, bib: string, rest: object): Promise<void> => {
    const input = { competitionId, competitorId: competition.competitors[bib], ...rest };
    const { entry, userErrors } = await enterInJournal(api, token, mutation, input);
    standings.push(entry?.standing ?? userErrors[0].code);
  };
  const disqualify = (bib: string) =>
    send(meet.referee, 'competitorDisqualify', bib, { rule: 'TR7.1', reason: 'conduct' });
  const cells = ({ series = [] }: any): string[] => series.filter((cell: string | null) => cell !== null);
  for (const { bib, status, ...competitor } of sheet.competitors) {
    if (status === 'DNS') await send(competition.official, 'competitorStartSet', bib, { status: 'DNS' });
    if (status === 'DQ' && cells(competitor).length === 0) await disqualify(bib);
  }
  for (let round = 1; round <= 12; round++) {
    for (const { bib, status, ...competitor } of sheet.competitors) {
      const cell = cells(competitor)[round - 1];
      if (cell === undefined) continue;
      await send(competition.official, 'attemptRecord', bib, { round, ...attemptOf(cell) });
      if (status === 'DQ' && cells(competitor).length === round) await disqualify(bib);
    }
    for (const { bib, after, by } of sheet.admitted ?? []) {
      const words: Record<string, string> = { R: 'REFEREE', J: 'JURY', D: 'DRAW' };
      const isNow = after === round || (after === undefined && round === 12);
      if (isNow)
        await send(meet.referee, 'competitorAdmit', bib, {
          afterRound: after,
          by: words[by],
          reason: 'fair',
        });
    }
  }
  return standings;
}

describe('entries made one by one', () => {
  it.each(valid)('%s', async (_name, { sheet, expect: expected }) => {
    const competition = await staffedCompetition(api, meet, startList(sheet), unitOf(sheet));
    const standings = await enterCard(sheet, competition);
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
