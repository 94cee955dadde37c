import { readSheet, readSheetSource } from './read-sheet.js';

type Loose = Record<string, unknown>;

function problemsIn(sheet: Loose): string[] {
  const reading = readSheetSource(JSON.stringify(sheet));
  return reading.ok ? [] : reading.problems.map(({ path, code }) => `${path} ${code}`);
}

function meet(sheets: unknown, scoring: unknown = { places: [3, 2, 1] }): Loose {
  return { format: 'sectorline-meet/1', scoring, sheets };
}

function shot(changes: Loose = {}): Loose {
  return { format: 'sectorline-sheet/1', rules: 'WA', event: 'shot', competitors: [], ...changes };
}

describe('a meet', () => {
  it('has a scoring and sheets', () => {
    expect(problemsIn(meet([]))).toEqual([]);
    expect(problemsIn(meet([shot(), shot()]))).toEqual([]);
    expect(problemsIn({ format: 'sectorline-meet/1', title: 'x' })).toEqual([
      '/scoring MISSING',
      '/sheets MISSING',
      '/title UNKNOWN_KEY',
    ]);
    expect(problemsIn(meet({}, []))).toEqual(['/scoring WRONG_TYPE', '/sheets WRONG_TYPE']);
  });

  it('has sheets of single competitions, each looked at', () => {
    const sheets = [
      shot({ event: 'boules' }),
      7,
      {},
      { format: 'sectorline-combined/1' },
      shot({ competitors: [{ bib: '1', series: ['x'] }] }),
    ];
    expect(problemsIn(meet(sheets))).toEqual([
      '/sheets/0/event UNKNOWN_VALUE',
      '/sheets/1 WRONG_TYPE',
      '/sheets/2/format MISSING',
      '/sheets/3/format UNKNOWN_VALUE',
      '/sheets/4/competitors/0/series/0 CELL',
    ]);
  });

  it('has the scoring, and no sheet in it another', () => {
    expect(problemsIn(meet([shot(), shot({ scoring: { places: [1] } })]))).toEqual([
      '/sheets/1/scoring SCORING',
    ]);
    expect(problemsIn(shot({ scoring: { places: [1] } }))).toEqual([]);
  });

  it('may have the same bibs in several sheets', () => {
    const sheet = shot({ competitors: [{ bib: '1' }] });
    expect(problemsIn(meet([sheet, sheet]))).toEqual([]);
  });

  it('has cuts of each sheet its own', () => {
    const field = Array.from({ length: 9 }, (_, at) => ({
      bib: `${at}`,
      series: [`1${9 - at}.00`, 'X', 'X'],
    }));
    const late = { ...field[8], series: ['11.00', 'X', 'X', 'X'] };
    const sheets = [shot({ colour: 1 }), shot({ competitors: [...field.slice(0, 8), late] })];
    expect(problemsIn(meet(sheets))).toEqual([
      '/sheets/0/colour UNKNOWN_KEY',
      '/sheets/1/competitors/8/series/3 AFTER_CUT',
    ]);
  });
});

describe('a scoring', () => {
  const scoring = (value: Loose): string[] => problemsIn(shot({ scoring: value }));

  it('has points from 0 to 10,000 with at most three decimals', () => {
    expect(scoring({ places: [10_000, 7.5, 0.125, 0, 5] })).toEqual([]);
    expect(scoring({ places: [] })).toEqual([]);
    expect(scoring({ places: [-1, 10_000.001, 0.0001, 1e-7, 1e300] })).toEqual(
      [0, 1, 2, 3, 4].map((at) => `/scoring/places/${at} SCORING`),
    );
    expect(scoring({ places: ['10', null] })).toEqual([
      '/scoring/places/0 WRONG_TYPE',
      '/scoring/places/1 WRONG_TYPE',
    ]);
    expect(scoring({ places: 10 })).toEqual(['/scoring/places WRONG_TYPE']);
    expect(scoring({})).toEqual(['/scoring/places MISSING']);
  });

  it('says who scores', () => {
    const places = [1];
    expect(scoring({ places, scorersPerClub: null, nonScorers: 'hold' })).toEqual([]);
    expect(scoring({ places, scorersPerClub: 2.5, nonScorers: 'keep', by: 1 })).toEqual([
      '/scoring/scorersPerClub WRONG_TYPE',
      '/scoring/nonScorers UNKNOWN_VALUE',
      '/scoring/by UNKNOWN_KEY',
    ]);
    expect(scoring({ places, scorersPerClub: 0 })).toEqual(['/scoring/scorersPerClub UNKNOWN_VALUE']);
  });
});

describe('the limit of 2,000 competitors', () => {
  const people = (count: number): Loose[] => Array.from({ length: count }, (_, at) => ({ bib: String(at) }));

  it('is of a file, all its sheets together', () => {
    expect(problemsIn(shot({ competitors: people(2000) }))).toEqual([]);
    expect(problemsIn(shot({ competitors: people(2001), colour: 1 }))).toEqual([' TOO_LARGE']);
    expect(
      problemsIn(meet([shot({ competitors: people(1000) }), shot({ competitors: people(1000) })])),
    ).toEqual([]);
    expect(
      problemsIn(meet([shot({ competitors: people(1000) }), shot({ competitors: people(1001) })])),
    ).toEqual([' TOO_LARGE']);
    const rows = people(2001);
    expect(problemsIn({ format: 'sectorline-combined/1', table: 'decathlon', rows })).toEqual([' TOO_LARGE']);
  });

  it('holds however the sheet came in', () => {
    expect(readSheet(new Map([['competitors', people(2001).map(() => null)]]))).toMatchObject({
      problems: [{ path: '', code: 'TOO_LARGE' }],
    });
  });
});
