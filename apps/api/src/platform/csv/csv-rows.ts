import { toldProblems, type CsvProblem } from './csv-problem.js';
import { CSV_LIMITS, csvTable, type CsvLine } from './csv-table.js';
import type { CsvSource } from './csv-text.js';
import { beginsFormula, fromText } from './formula.js';

/** What a column holds. An empty cell is `null`. */
export interface CsvColumn<Value, Empty extends boolean = boolean> {
  /** Whether a cell may be empty, and then the column be left out. */
  readonly mayBeEmpty: Empty;
  /** What a cell must look like, such as `a day as YYYY-MM-DD`. */
  readonly expected: string;
  /** `null`: the cell does not look so. */
  readonly read: (cell: string) => Value | null;
}

export type CsvColumns = Readonly<Record<string, CsvColumn<unknown>>>;

type ValueOf<Column> =
  Column extends CsvColumn<infer Value, infer Empty> ? Value | (Empty extends false ? never : null) : never;

/** One line, read. */
export interface CsvRow<Columns extends CsvColumns> {
  readonly line: number;
  readonly values: { readonly [Name in keyof Columns]: ValueOf<Columns[Name]> };
}

export type CsvRows<Columns extends CsvColumns> =
  | { readonly rows: readonly CsvRow<Columns>[] }
  | { readonly problems: readonly CsvProblem[] };

export function filled<Value>(
  expected: string,
  read: (cell: string) => Value | null,
): CsvColumn<Value, false> {
  return { mayBeEmpty: false, expected, read };
}

export function optional<Value>(
  expected: string,
  read: (cell: string) => Value | null,
): CsvColumn<Value, true> {
  return { mayBeEmpty: true, expected, read };
}

/** For a column that may hold one of a few words, in whatever case. */
export function oneOf<Word extends string>(words: readonly Word[]): (cell: string) => Word | null {
  return (cell) => words.find((word) => word.toLowerCase() === cell.toLowerCase()) ?? null;
}

/**
 * Text for people. What a spreadsheet would take for a formula is none: it would be carried out where it is opened.
 * Where somebody is called so all the same, an apostrophe stands before it, as our own tables have it.
 */
export function plainText(most: number): (cell: string) => string | null {
  return (cell) => {
    const text = fromText(cell);
    return beginsFormula(cell) || text.length > most ? null : text;
  };
}

/**
 * Reads a CSV text whose first line names its columns, in whatever order and case. All of it, or everything that is
 * wrong with it by line and column.
 */
export function readCsv<Columns extends CsvColumns>(source: CsvSource, columns: Columns): CsvRows<Columns> {
  const table = csvTable(source);
  if ('problems' in table) return table;
  const header = headerOf(table.header, columns);
  if ('problems' in header) return header;
  const problems: CsvProblem[] = [];
  const rows = table.lines.map((line) => rowOf(line, header.names, columns, problems));
  return problems.length > 0 ? { problems: toldProblems(problems) } : { rows };
}

function headerOf(
  { line, cells }: CsvLine,
  columns: CsvColumns,
): { readonly names: readonly string[] } | { readonly problems: readonly CsvProblem[] } {
  const names = withoutEmptyEnd(cells).map((cell) => cell.toLowerCase());
  const known = new Map(Object.keys(columns).map((name) => [name.toLowerCase(), name]));
  const problem = (code: string, column: string, message: string, remedy: string): CsvProblem => {
    return { code, line, column: column.slice(0, 64), message, remedy };
  };
  const inHeader = names.flatMap((name, at): CsvProblem[] => {
    if (!known.has(name)) {
      const remedy = `The columns are ${[...known.values()].join(', ')}.`;
      return [problem('UNKNOWN_COLUMN', cells[at]!, 'There is no such column.', remedy)];
    }
    if (names.indexOf(name) === at) return [];
    return [problem('COLUMN_TWICE', cells[at]!, 'The column is there twice.', 'Take one of them out.')];
  });
  const missing = Object.entries(columns).flatMap(([name, { mayBeEmpty }]): CsvProblem[] => {
    if (mayBeEmpty || names.includes(name.toLowerCase())) return [];
    return [problem('MISSING_COLUMN', name, 'The column is missing.', 'Put it in.')];
  });
  const problems = [...inHeader, ...missing];
  return problems.length > 0
    ? { problems: toldProblems(problems) }
    : { names: names.map((name) => known.get(name)!) };
}

/** Spreadsheets write empty columns on the right of a table. */
function withoutEmptyEnd(cells: readonly string[]): readonly string[] {
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

function rowOf<Columns extends CsvColumns>(
  { line, cells }: CsvLine,
  names: readonly string[],
  columns: Columns,
  problems: CsvProblem[],
): CsvRow<Columns> {
  if (cells.length < names.length || withoutEmptyEnd(cells).length > names.length) {
    problems.push({
      code: 'CELL_COUNT',
      line,
      column: null,
      message: `The line has ${cells.length} cells; the header has ${names.length}.`,
      remedy: 'Put a cell that holds the separator between quotation marks; leave cells empty, not out.',
    });
    return { line, values: {} as CsvRow<Columns>['values'] };
  }
  const values = Object.entries(columns).map(([name, column]) => {
    const cell = cells[names.indexOf(name)] ?? '';
    const value = cell === '' ? null : valueIn(cell, column);
    if (value === null && !(cell === '' && column.mayBeEmpty)) {
      problems.push(cellProblem(line, name, cell, column));
    }
    return [name, value];
  });
  return { line, values: Object.fromEntries(values) as CsvRow<Columns>['values'] };
}

/** Line breaks, tabs and other controls stand in no cell. */
const CONTROL = /[\p{Cc}\u2028\u2029]/u;

function valueIn(cell: string, { read }: CsvColumn<unknown>): unknown {
  return cell.length > CSV_LIMITS.cell || CONTROL.test(cell) ? null : read(cell);
}

const SHOWN = 40;

function cellProblem(
  line: number,
  column: string,
  cell: string,
  { expected }: CsvColumn<unknown>,
): CsvProblem {
  const remedy = `Write ${expected}.`;
  if (cell === '') return { code: 'CELL_EMPTY', line, column, message: 'The cell is empty.', remedy };
  const shown = cell.length > SHOWN ? `${cell.slice(0, SHOWN)}…` : cell;
  return { code: 'CELL', line, column, message: `${JSON.stringify(shown)} is not ${expected}.`, remedy };
}
