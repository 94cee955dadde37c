import { createHash } from 'node:crypto';
import type { EnteredLine, EnteredResultRow } from '#persistence';
import { parseRaceTime, parseWind } from '#rules';
import type { CsvProblem } from '../platform/csv/csv-problem.js';
import { filled, oneOf, optional, plainText, readCsv, type CsvRow } from '../platform/csv/csv-rows.js';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { lineProblems, type WrittenLine } from './entered-problems.js';

const MOST_LINES = 200;

/**
 * The columns of entered results, one line for each athlete or relay team. Lines of one `event`, `sex` and `age` are
 * one result, wherever they stand. There is no column for names: they are known from the start lists alone. A relay
 * team may go by its club.
 */
const COLUMNS = {
  event: filled('what was run, such as 100 m women', plainText(200)),
  relay: optional('yes or no', oneOf(['yes', 'no'])),
  sex: optional('W, M or X', oneOf(['W', 'M', 'X'] as const)),
  age: optional('an age category such as U18', plainText(40)),
  place: optional(`a place from 1 to ${MOST_LINES}`, placeIn),
  status: optional('DNS, DNF or DQ', oneOf(['DNS', 'DNF', 'DQ'] as const)),
  bib: optional('a bib, or what a relay team is called', plainText(64)),
  club: optional('a club as in the start lists', plainText(200)),
  time: optional('a time like 10.39, by hand 10.4, from a minute on 4:36.40', (cell) => parseRaceTime(cell)),
  wind: optional('a wind in m/s like +1.3, or NWI', (cell) => parseWind(cell.toUpperCase())),
};

function placeIn(cell: string): number | null {
  const place = /^[1-9]\d{0,2}$/.test(cell) ? Number(cell) : null;
  return place !== null && place <= MOST_LINES ? place : null;
}

type Row = CsvRow<typeof COLUMNS>;

/** One result of a table. */
export interface ReadResult {
  /** Where it begins. */
  readonly line: number;
  readonly result: Pick<EnteredResultRow, 'title' | 'isRelay' | 'categorySex' | 'categoryAge' | 'lines'>;
}

/** The results of a table in the order in which they begin, or everything that is wrong with it. */
export function enteredTable(
  source: CsvSource,
): { readonly results: readonly ReadResult[] } | { readonly problems: readonly CsvProblem[] } {
  const read = readCsv(source, COLUMNS);
  if ('problems' in read) return read;
  if (read.rows.length === 0) return { problems: [NO_LINES] };
  const groups = groupsOf(read.rows);
  const problems = groups.flatMap(problemsIn).toSorted((a, b) => a.line - b.line);
  return problems.length > 0 ? { problems } : { results: groups.map(resultOf) };
}

function groupsOf(rows: readonly Row[]): Row[][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const { event, sex, age } = row.values;
    const key = JSON.stringify([event, sex, age]);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()];
}

function problemsIn(group: readonly Row[]): CsvProblem[] {
  const [first] = group;
  const isRelay = isRelayLine(first!);
  const written = group.map((row): WrittenLine => ({ ...row.values, bib: bibOf(row) ?? '' }));
  return group.flatMap((row, at) => {
    const { line } = row;
    const own: CsvProblem[] = [];
    if (at === MOST_LINES) own.push({ ...TOO_MANY_IN_RESULT, line });
    if (isRelayLine(row) !== isRelay) own.push({ ...RELAY_OR_NOT, line });
    if (bibOf(row) === null) own.push({ ...(isRelay ? TEAM_MISSING : BIB_MISSING), line });
    const others = lineProblems(written[at]!, at, written).map(
      ({ code, path, message, remedy }): CsvProblem => ({
        code,
        line,
        column: path?.at(-1) ?? null,
        message,
        remedy: remedy ?? '',
      }),
    );
    return bibOf(row) === null
      ? [...own, ...others.filter(({ code }) => code !== 'BIB_TWICE')]
      : [...own, ...others];
  });
}

function isRelayLine({ values }: Row): boolean {
  return values.relay === 'yes';
}

function bibOf({ values: { bib, club, relay } }: Row): string | null {
  return bib ?? (relay === 'yes' && club !== null ? club.slice(0, 64) : null);
}

function resultOf(group: readonly Row[]): ReadResult {
  const [first] = group;
  const { event, sex, age } = first!.values;
  return {
    line: first!.line,
    result: {
      title: event,
      isRelay: isRelayLine(first!),
      categorySex: sex,
      categoryAge: age,
      lines: group.map((row): EnteredLine => {
        const { club, place, status, time, wind } = row.values;
        return { bib: bibOf(row)!, club, place, status, time, wind };
      }),
    },
  };
}

/**
 * The id of a result of a table: the same for the same import and position (a UUID of version 8, RFC 9562, over
 * SHA-256), so that a table that is sent again makes nothing twice.
 */
export function resultId(importId: string, at: number): string {
  const bytes = createHash('sha256').update(`${importId}/${at}`).digest().subarray(0, 16);
  bytes[6] = (bytes[6]! & 0x0f) | 0x80;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  return [0, 8, 12, 16, 20].map((from, at, all) => hex.slice(from, all[at + 1])).join('-');
}

/** The result is at the meet already, and would be counted twice. */
export function enteredAlready({ line, result }: ReadResult): CsvProblem {
  return {
    code: 'ENTERED_ALREADY',
    line,
    column: 'event',
    message: `A result of "${result.title}" with this sex and age counts at the meet already.`,
    remedy: 'Take its lines out, or replace the entered result.',
  };
}

const NO_LINES: CsvProblem = {
  code: 'NO_LINES',
  line: 1,
  column: null,
  message: 'There is no line below the header.',
  remedy: 'Write a line for each athlete or relay team.',
};
const TOO_MANY_IN_RESULT = {
  code: 'TOO_MANY_IN_RESULT',
  column: 'event',
  message: `From here on the result has more than ${MOST_LINES} lines.`,
  remedy: 'Give another race another title.',
};
const RELAY_OR_NOT = {
  code: 'RELAY_OR_NOT',
  column: 'relay',
  message: 'Other lines of this result say something else of whether it is a relay.',
  remedy: 'Write yes in all its lines, or in none.',
};
const BIB_MISSING = {
  code: 'BIB_MISSING',
  column: 'bib',
  message: 'Nothing says who this is.',
  remedy: 'Write the bib.',
};
const TEAM_MISSING = {
  code: 'BIB_MISSING',
  column: 'bib',
  message: 'Nothing says which team this is.',
  remedy: 'Write its club, or what it is called.',
};
