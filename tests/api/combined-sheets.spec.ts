import fc from 'fast-check';
import { normaliseSheet, recount } from '#rules';
import { randomUUID } from 'node:crypto';
import { partOf, readCases } from '../cases/read-cases.js';
import { combinedResults } from '../reference/combined-points.js';
import { drawn } from '../reference/draw.js';
import { combinedSheet } from '../reference/generate-combined.js';
import { startApi, type TestApi } from '../support/api.js';
import { staffedMeet, type StaffedMeet } from '../support/circle.js';
import { CombinedScene } from '../support/combined.js';

/*
 * Sheets of combined events through the API: the same answers to the letter as the library gives, and as the second
 * implementation of the format gives, which was written from its text by another hand.
 */
const cases = readCases().filter(([, { sheet }]) => sheet.format === 'sectorline-combined/1');

const IMPORT = `mutation ($input: SheetImportInput!) { sheetImport(input: $input) {
  competition { id }
  combinedEvent { id status sheet result standing { rows { bib place isEqual total status } } }
  isReplay
  userErrors { code message ... on SheetProblem { pointer } }
} }`;

let api: TestApi;
let meet: StaffedMeet;
beforeAll(async () => {
  api = await startApi();
  // An NCAA meet parts equal totals; a sheet does not.
  meet = await staffedMeet(api, { rules: 'NCAA' });
});
afterAll(() => api.close());

async function importSheet(sheet: object, more: object = {}): Promise<any> {
  const input = { meetId: meet.id, title: 'Case', sheet, ...more };
  return (await api.data(IMPORT, { input }, meet.director)).sheetImport;
}

const written = (sheet: object): any => JSON.parse(JSON.stringify(recount(JSON.stringify(sheet))));

it('there are published results to try', () => {
  expect(cases.length).toBeGreaterThanOrEqual(5);
});

describe('a sheet of a combined event taken in as a whole', () => {
  it.each(cases)('%s', async (_name, { sheet, expect: expected }) => {
    const { competition, combinedEvent, userErrors } = await importSheet(sheet);
    expect([competition, userErrors]).toEqual([null, []]);
    expect(partOf(combinedEvent.result, expected)).toEqual(expected);
    expect(combinedEvent.result).toEqual(written(sheet));
    expect(normaliseSheet(combinedEvent.sheet)).toEqual(normaliseSheet(sheet));
    const rows = combinedEvent.standing.rows.map(
      ({ isEqual: equal, total: points, status, ...row }: any) => ({
        ...row,
        ...{ equal, points, status: status === null ? null : 'DNF' },
      }),
    );
    expect(
      partOf(
        rows,
        expected.results.map(({ eventPoints: _, ...row }: any) => row),
      ),
    ).toEqual(expected.results.map(({ eventPoints: _, ...row }: any) => row));
  });

  it('whatever it holds: every programme, times by hand, marks that are none, who stops on the way', async () => {
    for (const sheet of fc.sample(drawn(combinedSheet), { numRuns: 40 })) {
      const { combinedEvent, userErrors } = await importSheet(sheet);
      expect(userErrors).toEqual([]);
      expect(combinedEvent.result).toEqual(written(sheet));
      expect(combinedEvent.result.results).toEqual(combinedResults(sheet));
      expect(normaliseSheet(combinedEvent.sheet)).toEqual(normaliseSheet(sheet as never));
    }
  });

  it('may be sent again under its id, and is then its journal like any other', async () => {
    const { sheet } = cases[0]![1];
    const id = randomUUID();
    const first = await importSheet(sheet, { id });
    const again = await importSheet(sheet, { id });
    expect([first.isReplay, again.isReplay]).toEqual([false, true]);
    expect(again.combinedEvent.id).toBe(first.combinedEvent.id);
    expect((await importSheet({ ...sheet, rows: [] }, { id })).userErrors[0].code).toBe('ID_REUSED');
    const read = `query ($id: ID!) { combinedEvent(id: $id) { entrants { id bib } } }`;
    const { entrants } = (await api.data(read, { id: first.combinedEvent.id })).combinedEvent;
    const answer = await CombinedScene.enterIn(api, meet, first.combinedEvent.id, 'combinedStartSet', {
      ...{ entrantId: entrants[0].id, status: 'DNS' },
    });
    expect(answer.userErrors[0].code).toBe('HAS_RESULTS');
  });

  it('is refused with all its problems by their places', async () => {
    const sheet = {
      ...{ format: 'sectorline-combined/1', table: 'pentathlon-indoor' },
      rows: [{ bib: '1', marks: { '60mh': '8.4', 'high-jump': '1.70', shot: null, 'long-jump': '5.9' } }],
    };
    const { combinedEvent, userErrors } = await importSheet(sheet);
    expect(combinedEvent).toBeNull();
    const problems = written(sheet).problems.map(({ path: pointer, code }: any) => ({ pointer, code }));
    expect(problems.length).toBeGreaterThan(2);
    expect(userErrors.map(({ pointer, code }: any) => ({ pointer, code }))).toEqual(problems);
    const tooLong = { ...sheet, table: 'pentathlon-indoor', rows: [] };
    expect((await importSheet(tooLong)).userErrors).toEqual([]);
  });
});
