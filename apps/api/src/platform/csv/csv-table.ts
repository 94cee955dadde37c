import { CsvError, parse } from 'csv-parse/sync';
import type { CsvProblem } from './csv-problem.js';
import { csvText, type CsvSource } from './csv-text.js';

/** One line of a CSV text. */
export interface CsvLine {
  /** From 1, as an editor counts: where the line begins. */
  readonly line: number;
  /** Without white space around them. */
  readonly cells: readonly string[];
}

export type CsvTable =
  | { readonly header: CsvLine; readonly lines: readonly CsvLine[] }
  | { readonly problems: readonly CsvProblem[] };

/** What one text may have at most: the seasons of a big club. */
export const CSV_LIMITS = { size: 2_000_000, lines: 10_000, cell: 500 } as const;

const DELIMITERS = [',', ';', '\t'] as const;

/**
 * The lines of a CSV text (RFC 4180) with comma, semicolon or tab between the cells, whichever its header has most of.
 * Empty lines are left out.
 */
export function csvTable(source: CsvSource): CsvTable {
  if (source.length > CSV_LIMITS.size) return { problems: [TOO_LARGE] };
  const read = csvText(source);
  if ('problem' in read) return { problems: [read.problem] };
  const lines = linesOf(read.text);
  if ('problems' in lines) return lines;
  const [header, ...rest] = lines;
  if (!header) return { problems: [EMPTY] };
  if (rest.length > CSV_LIMITS.lines) return { problems: [TOO_MANY_LINES] };
  return { header, lines: rest };
}

function linesOf(text: string): CsvLine[] | { readonly problems: CsvProblem[] } {
  try {
    const records = parse(text, {
      delimiter: delimiterOf(text),
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      trim: true,
      info: true,
    }) as unknown as { readonly record: string[]; readonly info: { readonly lines: number } }[];
    return records
      .map(({ record, info }) => ({ line: info.lines - breaksIn(record), cells: record.map(trimmed) }))
      .filter(({ cells }) => cells.some((cell) => cell !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { problems: [quoteProblem(error)] };
  }
}

/** A record is counted where it ends. */
function breaksIn(record: readonly string[]): number {
  return record.reduce((sum, cell) => sum + (cell.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
}

function trimmed(cell: string): string {
  return cell.trim();
}

function delimiterOf(text: string): string {
  const header = /^[^\n\r]*/.exec(text.trimStart())![0].replaceAll(/"[^"]*"/g, '');
  const countOf = (delimiter: string): number => header.split(delimiter).length;
  return DELIMITERS.reduce((most, one) => (countOf(one) > countOf(most) ? one : most));
}

function quoteProblem({ lines }: CsvError & { readonly lines?: number }): CsvProblem {
  return {
    code: 'QUOTES',
    line: lines ?? 1,
    column: null,
    message: 'From here on the quotation marks do not fit together.',
    remedy: 'Put a cell that holds quotation marks between quotation marks, and double those inside it.',
  };
}

const TOO_LARGE: CsvProblem = {
  code: 'TOO_LARGE',
  line: 1,
  column: null,
  message: `The text is longer than ${CSV_LIMITS.size} characters.`,
  remedy: 'Send it in parts.',
};

const TOO_MANY_LINES: CsvProblem = {
  code: 'TOO_MANY_LINES',
  line: 1,
  column: null,
  message: `The text has more than ${CSV_LIMITS.lines} lines below its header.`,
  remedy: 'Send it in parts.',
};

const EMPTY: CsvProblem = {
  code: 'EMPTY',
  line: 1,
  column: null,
  message: 'There is no line with the names of the columns.',
  remedy: 'Begin with a line that names the columns.',
};
