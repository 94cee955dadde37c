import fc from 'fast-check';
import { filled, oneOf, optional, plainText, readCsv } from './csv-rows.js';
import { CSV_LIMITS } from './csv-table.js';
import type { CsvSource } from './csv-text.js';

const COLUMNS = {
  event: filled('one of the events', oneOf(['discus', 'long-jump'])),
  mark: filled('a mark', (cell) => (/^\d+\.\d\d$/.test(cell) ? cell : null)),
  note: optional('text', plainText(40)),
};

function rowsOf(source: CsvSource): unknown[] {
  const read = readCsv(source, COLUMNS);
  return 'rows' in read ? read.rows.map(({ line, values }) => [line, values]) : [read.problems];
}

function problemsOf(source: CsvSource): unknown[] {
  const read = readCsv(source, COLUMNS);
  return 'problems' in read ? read.problems.map(({ code, line, column }) => [code, line, column]) : [];
}

const ONE = [[2, { event: 'discus', mark: '58.10', note: 'old ground' }]];

describe('a table as CSV', () => {
  it.each([
    ['with commas', 'event,mark,note\ndiscus,58.10,old ground\n'],
    ['with semicolons and Windows line ends', 'event;mark;note\r\ndiscus;58.10;old ground\r\n'],
    ['with tabs, and no line end', 'event\tmark\tnote\ndiscus\t58.10\told ground'],
    ['with old line ends', 'event,mark,note\rdiscus,58.10,old ground'],
    ['with a byte order mark', '\u{feff}event,mark,note\ndiscus,58.10,old ground'],
    ['with its columns in another order and case', 'Note,MARK,Event\nold ground,58.10,Discus'],
    ['in quotation marks', '"event";"mark";"note"\n"discus"; "58.10" ;"old ground"'],
    ['with empty columns on the right', 'event,mark,note,,\ndiscus,58.10,old ground,,'],
  ])('is read %s', (_how, text) => {
    expect(rowsOf(text)).toEqual(ONE);
    expect(rowsOf(Buffer.from(text, 'utf8'))).toEqual(ONE);
  });

  it('counts lines as an editor does, with empty ones and line breaks in cells', () => {
    expect(problemsOf('\nevent,mark\n\n"dis\ncus",58.10\r\ndiscus,58,1\n\n,58.10')).toEqual([
      ['CELL', 4, 'event'],
      ['CELL_COUNT', 6, null],
      ['CELL_EMPTY', 8, 'event'],
    ]);
  });

  it('may leave out columns that may be empty, and holds null then', () => {
    expect(rowsOf('mark,event\n58.10,discus')).toEqual([[2, { event: 'discus', mark: '58.10', note: null }]]);
  });

  it('names every fault of its header', () => {
    expect(problemsOf('event,Event,weight\ndiscus,discus,1')).toEqual([
      ['COLUMN_TWICE', 1, 'Event'],
      ['UNKNOWN_COLUMN', 1, 'weight'],
      ['MISSING_COLUMN', 1, 'mark'],
    ]);
  });

  it('is nothing without a header', () => {
    expect(problemsOf('')).toEqual([['EMPTY', 1, null]]);
    expect(problemsOf(' \n;;\n')).toEqual([['EMPTY', 1, null]]);
  });

  it.each([
    ['that are not closed', 'event,mark\ndiscus,"58.10', 2],
    ['within a cell', 'event,mark\ndiscus,58"10', 2],
    ['with something after them', 'event,mark\ndiscus,"58.10"x', 2],
  ])('has no quotation marks %s', (_which, text, line) => {
    expect(problemsOf(text)).toEqual([['QUOTES', line, null]]);
  });

  it('has limits', () => {
    expect(problemsOf('x'.repeat(CSV_LIMITS.size + 1))).toEqual([['TOO_LARGE', 1, null]]);
    expect(problemsOf(`event,mark${'\ndiscus,1.00'.repeat(CSV_LIMITS.lines + 1)}`)).toEqual([
      ['TOO_MANY_LINES', 1, null],
    ]);
    const wrong = problemsOf(`event,mark${'\ndiscus,long'.repeat(CSV_LIMITS.lines)}`);
    expect(wrong).toHaveLength(201);
    expect(wrong.at(-1)).toEqual(['MORE_PROBLEMS', 202, null]);
  });

  it('holds no formulas and no control characters in its texts', () => {
    const cells = [
      '=1+1',
      '@SUM(A1)',
      '+cmd',
      '-2+3',
      '"=HYPERLINK(""x"")"',
      '"a\nb"',
      'a\u{1b}b',
      'a\u{2028}b',
    ];
    for (const cell of cells) {
      expect(problemsOf(`event,mark,note\ndiscus,58.10,${cell}`)).toEqual([['CELL', 2, 'note']]);
    }
  });
});

describe('the bytes of a file', () => {
  const text = 'event,mark,note\ndiscus,58.10,Jürgen Åberg\n';
  const read = [[2, { event: 'discus', mark: '58.10', note: 'Jürgen Åberg' }]];

  it('may be in UTF-8 or in Windows-1252', () => {
    expect(rowsOf(Buffer.from(text, 'utf8'))).toEqual(read);
    expect(rowsOf(Buffer.from(text, 'latin1'))).toEqual(read);
    // 0x80 is the euro sign in Windows-1252 and a control character in ISO 8859-1.
    const euro = Buffer.concat([Buffer.from('event,mark,note\ndiscus,1.00,5 '), Buffer.from([0x80])]);
    expect(rowsOf(euro)).toEqual([[2, { event: 'discus', mark: '1.00', note: '5 €' }]]);
  });

  it('are not in both', () => {
    const line = 'discus,1.00,Åberg\r\n';
    const mixed = [Buffer.from(text, 'utf8'), Buffer.from(line, 'latin1'), Buffer.from(line, 'utf8')];
    expect(problemsOf(Buffer.concat(mixed))).toEqual([['MIXED_ENCODINGS', 3, null]]);
    expect(problemsOf(Buffer.concat(mixed.toReversed().concat(Buffer.from('\n'))))).toEqual([
      ['MIXED_ENCODINGS', 2, null],
    ]);
  });

  it('are no UTF-16, and no text that lost its letters', () => {
    expect(problemsOf(Buffer.from(`\u{feff}${text}`, 'utf16le'))).toEqual([['NUL', 1, null]]);
    expect(problemsOf('event,mark\ndiscus\0,1.00')).toEqual([['NUL', 1, null]]);
    expect(problemsOf('event,mark,note\ndiscus,1.00,J\u{fffd}rgen')).toEqual([['WRONG_ENCODING', 2, null]]);
  });

  it('whatever they are, are read or have problems', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), fc.boolean(), (bytes, headed) => {
        const source = headed ? Buffer.concat([Buffer.from('event;mark;note\n'), bytes]) : bytes;
        const rows = readCsv(source, COLUMNS);
        return 'rows' in rows
          ? rows.rows.every(({ values }) => values.event !== null)
          : rows.problems.length > 0;
      }),
      { numRuns: 2_000 },
    );
  });

  it('give back what a careful writer wrote', () => {
    const cell = fc
      .string({ maxLength: 30 })
      .filter((one) => one.trim() === one && plainText(40)(one) === one);
    const safe = cell.filter((one) => !/[\p{Cc}\u2028\u2029\ufffd]/u.test(one));
    fc.assert(
      fc.property(fc.array(safe, { minLength: 1 }), fc.constantFrom(',', ';', '\t'), (notes, delimiter) => {
        const lines = notes.map((note) =>
          ['discus', '1.00', `"${note.replaceAll('"', '""')}"`].join(delimiter),
        );
        const written = [['event', 'mark', 'note'].join(delimiter), ...lines].join('\r\n');
        const rows = readCsv(Buffer.from(written), COLUMNS);
        const back = 'rows' in rows ? rows.rows.map(({ values }) => values.note ?? '') : null;
        return JSON.stringify(back) === JSON.stringify(notes);
      }),
      { numRuns: 2_000 },
    );
  });
});
