import { COMBINED_TABLES } from '../combined/combined-tables.js';
import { readSheetSource } from './read-sheet.js';

type Loose = Record<string, unknown>;

const MARKS: Loose = {
  '60mh': '8.50',
  'high-jump': '1.75',
  shot: '13.40',
  'long-jump': null,
  '800m': '2:12.30',
};

function problemsIn(sheet: Loose): string[] {
  const reading = readSheetSource(JSON.stringify({ format: 'sectorline-combined/1', ...sheet }));
  return reading.ok ? [] : reading.problems.map(({ path, code }) => `${path} ${code}`);
}

function pentathlon(marks: Loose, changes: Loose = {}): string[] {
  const rows = [{ bib: '1', marks: { ...MARKS, ...marks } }];
  return problemsIn({ table: 'pentathlon-indoor', rows, ...changes });
}

describe('a combined events sheet', () => {
  it('has a table, rows and the marks of every event', () => {
    expect(pentathlon({})).toEqual([]);
    expect(problemsIn({})).toEqual(['/table MISSING', '/rows MISSING']);
    expect(problemsIn({ table: 'triathlon', timing: 'stopwatch', rows: {} })).toEqual([
      '/table UNKNOWN_VALUE',
      '/timing UNKNOWN_VALUE',
      '/rows WRONG_TYPE',
    ]);
    for (const [table, { events }] of Object.entries(COMBINED_TABLES)) {
      expect(problemsIn({ table, rows: [{ bib: '1', marks: {} }] })).toEqual(
        events.map((event) => `/rows/0/marks/${event} MISSING`),
      );
    }
  });

  it('has rows like competitors', () => {
    const marks = MARKS;
    const rows = [
      7,
      { bib: '', marks },
      { bib: '1', name: 1, club: 2, marks: 3 },
      { bib: '1', marks, guest: true },
    ];
    expect(problemsIn({ table: 'pentathlon-indoor', rows })).toEqual([
      '/rows/0 WRONG_TYPE',
      '/rows/1/bib UNKNOWN_VALUE',
      '/rows/2/name WRONG_TYPE',
      '/rows/2/club WRONG_TYPE',
      '/rows/2/marks WRONG_TYPE',
      '/rows/3/bib DUPLICATE',
      '/rows/3/guest UNKNOWN_KEY',
    ]);
  });

  it('has times, metric marks, null and DNS', () => {
    expect(pentathlon({ '60mh': 'DNS', '800m': null, 'high-jump': 'DNS' })).toEqual([]);
    const wrong = {
      '60mh': '8.5',
      'high-jump': '5-09.00',
      shot: '13.4',
      'long-jump': '6.00 +1.0',
      '800m': '72.30',
    };
    expect(pentathlon(wrong)).toEqual(Object.keys(MARKS).map((event) => `/rows/0/marks/${event} CELL`));
    expect(pentathlon({ '60mh': 8.5, javelin: '50.00' })).toEqual([
      '/rows/0/marks/60mh WRONG_TYPE',
      '/rows/0/marks/javelin UNKNOWN_KEY',
    ]);
  });

  it('has times by hand with one decimal or two', () => {
    const timing = 'hand';
    expect(pentathlon({ '60mh': '8.5', '800m': '2:12.3' }, { timing })).toEqual([]);
    expect(pentathlon({ '60mh': '8.51', '800m': '2:12.31' }, { timing })).toEqual([]);
    expect(pentathlon({ shot: '13.4' }, { timing })).toEqual(['/rows/0/marks/shot CELL']);
    expect(pentathlon({ '60mh': '8.5' }, { timing: 7 })).toEqual(['/timing WRONG_TYPE']);
  });

  it('has marks that are strings even where the table is not known', () => {
    expect(pentathlon({ '60mh': 8.5, curling: 'x' }, { table: 'x' })).toEqual([
      '/table UNKNOWN_VALUE',
      '/rows/0/marks/60mh WRONG_TYPE',
    ]);
  });
});
