import { stringify } from 'csv-stringify/sync';
import { asText } from './formula.js';

/** A column of a table that is written out. A cell is empty where `of` gives `null`. */
export interface CsvExportColumn<Row> {
  readonly name: string;
  /**
   * `number`: what reads as a decimal number is written bare, so that a spreadsheet counts with it (`-0.4`, and `1.3`
   * for `+1.3`); whatever else stands there, such as `NWI` or `47-06.25`, is text.
   */
  readonly holds: 'text' | 'number';
  readonly of: (row: Row) => string | number | null;
}

export const CSV_TYPE = 'text/csv; charset=utf-8';

/** Spreadsheets take a file without it for one in the encoding of their country. */
const BYTE_ORDER_MARK = '\u{feff}';

/**
 * A table as CSV (RFC 4180, CRLF at the end of each line) in UTF-8. No cell of text begins a formula (OWASP ASVS 5.0,
 * 1.2.10): such text is written with an apostrophe before it, and `readCsv` takes that off again.
 */
export function writeCsv<Row>(columns: readonly CsvExportColumn<Row>[], rows: readonly Row[]): string {
  const header = columns.map(({ name }) => asText(name));
  const lines = rows.map((row) => columns.map((column) => cellOf(column, row)));
  return BYTE_ORDER_MARK + stringify([header, ...lines], { record_delimiter: 'windows' });
}

const NUMBER = /^[+-]?\d+(\.\d+)?$/;

function cellOf<Row>({ holds, of }: CsvExportColumn<Row>, row: Row): string {
  const value = of(row);
  if (value === null) return '';
  const text = String(value);
  return holds === 'number' && NUMBER.test(text) ? text.replace(/^\+/, '') : asText(text);
}
