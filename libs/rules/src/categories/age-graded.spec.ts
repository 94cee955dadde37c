import { ageFactorProblems, ageGradedList, type AgeFactorTable } from './age-graded.js';

/** Constructed factors: no published table comes with the library. */
const TABLE: AgeFactorTable = {
  source: 'constructed for this test',
  factors: [
    { sex: 'M', age: '50', factor: '1.25' },
    { sex: 'W', age: '70', factor: '2' },
    { sex: 'M', age: '35', factor: '1.0001' },
  ],
};

describe('an age-graded list', () => {
  it('ranks marks times factors, exactly, and shows whole units', () => {
    expect(
      ageGradedList(
        [
          { key: 'a', sex: 'M', age: '35', mark: 4000 },
          { key: 'b', sex: 'M', age: '50', mark: 3200 },
          { key: 'c', sex: 'W', age: '70', mark: 2000 },
          { key: 'd', sex: 'M', age: '50', mark: 3201 },
        ],
        TABLE,
      ),
    ).toEqual([
      { key: 'd', graded: 4001, place: 1, equal: false },
      // 4000.4, not 4000: the exact product decides.
      { key: 'a', graded: 4000, place: 2, equal: false },
      { key: 'b', graded: 4000, place: 3, equal: true },
      { key: 'c', graded: 4000, place: 3, equal: true },
    ]);
  });

  it('lists without a place who has no mark or no factor', () => {
    expect(
      ageGradedList(
        [
          { key: 'a', sex: 'W', age: '35', mark: 4000 },
          { key: 'b', sex: 'M', age: '50', mark: null },
        ],
        TABLE,
      ),
    ).toEqual([
      { key: 'a', graded: null, place: null, equal: false },
      { key: 'b', graded: null, place: null, equal: false },
    ]);
  });

  it('takes a table only with a source, single lines and decimals', () => {
    expect(ageFactorProblems(TABLE)).toEqual([]);
    const [line] = TABLE.factors;
    const factors = [line!, { ...line!, factor: '1e3' }, { ...line!, age: '55', factor: '0' }];
    expect(ageFactorProblems({ source: ' ', factors }).map(({ index, code }) => [index, code])).toEqual([
      [null, 'MISSING'],
      [1, 'DUPLICATE'],
      [1, 'FACTOR'],
      [2, 'FACTOR'],
    ]);
  });
});
