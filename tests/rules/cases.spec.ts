import { recount } from '#rules';
import { partOf, readCases } from '../cases/read-cases.js';

const cases = readCases();

describe('the cases of the sheet format', () => {
  it('are all there', () => {
    expect(cases.length).toBeGreaterThanOrEqual(72);
  });

  it.each(cases)('%s', (_name, { sheet, expect: expected }) => {
    const document: unknown = JSON.parse(JSON.stringify(recount(JSON.stringify(sheet))));
    expect(partOf(document, expected)).toEqual(expected);
  });
});
