import fc from 'fast-check';
import { parse } from 'csv-parse/sync';
import { optional, plainText, readCsv } from './csv-rows.js';
import { writeCsv, type CsvExportColumn } from './csv-writer.js';

interface Line {
  readonly name: string | null;
  readonly wind: string | null;
  readonly place: number | null;
}

const COLUMNS: readonly CsvExportColumn<Line>[] = [
  { name: 'name', holds: 'text', of: ({ name }) => name },
  { name: 'wind', holds: 'number', of: ({ wind }) => wind },
  { name: 'place', holds: 'number', of: ({ place }) => place },
];

const HOSTILE = ['=', '+', '-', '@', "'", '"', ',', ';', '\t', '\r\n', '＝', 'a', '1', '.', ' '] as const;
const runs = process.env.LONG ? 10_000 : 300;

describe('a table that is written out', () => {
  it('keeps numbers numbers, and writes signs only where they mean something', () => {
    const text = writeCsv(COLUMNS, [
      { name: 'Ada “Fly” Mercer', wind: '+1.3', place: 1 },
      { name: '=1+1', wind: '-0.4', place: 2 },
      { name: '-', wind: 'NWI', place: null },
      { name: 'a "quoted", name', wind: '+cmd', place: 0 },
    ]);
    expect(text).toBe(
      [
        '\u{feff}name,wind,place',
        'Ada “Fly” Mercer,1.3,1',
        "'=1+1,-0.4,2",
        "'-,NWI,",
        `"a ""quoted"", name",'+cmd,0`,
        '',
      ].join('\r\n'),
    );
  });

  /* OWASP ASVS 5.0, 1.2.10; that numbers stay bare is RFC 4180's silence and a spreadsheet's need. */
  it('begins no formula, and another reader of RFC 4180 finds the cells', () => {
    const cell = fc.option(fc.string({ unit: fc.constantFrom(...HOSTILE), maxLength: 12 }), { nil: null });
    const line = fc.record({ name: cell, wind: cell, place: fc.option(fc.integer(), { nil: null }) });
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 10 }), (lines) => {
        const cells = parse(writeCsv(COLUMNS, lines), { bom: true });
        expect(cells).toHaveLength(lines.length + 1);
        for (const [name, wind, place] of cells.slice(1)) {
          expect(name).not.toMatch(/^[=+\-@\t\r＝＋－＠]/u);
          expect(wind).toMatch(/^(-?\d+(\.\d+)?$|[^=+\-@\t\r＝＋－＠]|$)/u);
          expect(place).toMatch(/^(-?\d+)?$/);
        }
      }),
      { numRuns: runs },
    );
  });

  it('is read back as it was, where cells are trimmed and hold no line breaks', () => {
    const text = fc
      .string({ unit: fc.constantFrom(...HOSTILE), maxLength: 12 })
      .map((one) => one.replaceAll(/[\t\r\n]/g, '').trim())
      .filter((one) => one !== '');
    fc.assert(
      fc.property(fc.array(text, { minLength: 1, maxLength: 10 }), (names) => {
        const written = writeCsv(
          COLUMNS,
          names.map((name) => ({ name, wind: null, place: null })),
        );
        const columns = {
          name: optional('text', plainText(40)),
          wind: optional('text', plainText(40)),
          place: optional('text', plainText(40)),
        };
        const read = readCsv(written, columns);
        expect('rows' in read && read.rows.map(({ values }) => values.name)).toEqual(names);
      }),
      { numRuns: runs },
    );
  });
});
