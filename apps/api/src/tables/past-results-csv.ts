import type { PastResultRow } from '#persistence';
import { DISTANCE_EVENT_CODES, isDate, parseMark, VERTICAL_EVENT_CODES, type EventCode } from '#rules';
import { toldMarkProblems } from '../platform/competition/told-mark.js';
import type { CsvProblem } from '../platform/csv/csv-problem.js';
import { filled, oneOf, optional, plainText, readCsv, type CsvRow } from '../platform/csv/csv-rows.js';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { windCell } from '../platform/csv/wind-cell.js';
import type { PersonLine } from './table-persons.js';
import { PERSON_COLUMNS } from './table-reading.js';

const EVENTS: readonly EventCode[] = [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES];
const GRAMS = /^[1-9]\d{0,4}$/;

/** The columns of a table of past results. */
const COLUMNS = {
  ...PERSON_COLUMNS,
  date: filled('a day as YYYY-MM-DD', (cell) => (isDate(cell) && cell >= '1900-01-01' ? cell : null)),
  meet: filled('the name of the meet, at most 200 characters', plainText(200)),
  event: filled(`one of ${EVENTS.join(', ')}`, eventIn),
  mark: filled('a mark like 61.10 or 47-06.25', parseMark),
  wind: optional('a wind like +1.3, or NWI', windCell),
  indoor: optional('yes or no', oneOf(['yes', 'no'])),
  implement_g: optional('whole grams, at most 99999', (cell) => (GRAMS.test(cell) ? Number(cell) : null)),
  place: optional('a place from 1 to 2000', placeIn),
};

function eventIn(cell: string): EventCode | null {
  const code = cell.toLowerCase().replaceAll(/[ _]/g, '-');
  return EVENTS.find((event) => event === code) ?? null;
}

const LAST_PLACE = 2000;

function placeIn(cell: string): number | null {
  const place = /^[1-9]\d{0,3}$/.test(cell) ? Number(cell) : null;
  return place !== null && place <= LAST_PLACE ? place : null;
}

const COLUMN_OF = { wind: 'wind', implementGrams: 'implement_g', onDate: 'date' } as const;

export type PastValues = Pick<
  PastResultRow,
  'event' | 'unit' | 'mark' | 'wind' | 'indoor' | 'implementGrams' | 'onDate' | 'meetName' | 'place'
>;

export interface PastLine {
  readonly line: number;
  readonly person: PersonLine;
  readonly values: PastValues;
}

export type PastTable =
  | { readonly lines: readonly PastLine[] }
  | { readonly problems: readonly CsvProblem[] };

/** What can be said of a table of past results without knowing who anybody is. `today`: `YYYY-MM-DD`. */
export function pastTable(source: CsvSource, today: string): PastTable {
  const read = readCsv(source, COLUMNS);
  if ('problems' in read) return read;
  if (read.rows.length === 0) return { problems: [NO_LINES] };
  const problems: CsvProblem[] = [];
  const lines = read.rows.map((row): PastLine => {
    const { line, values: cells } = row;
    const values = valuesOf(row);
    for (const { code, field, message, remedy } of toldMarkProblems(values, today)) {
      problems.push({ code, line, column: COLUMN_OF[field], message, remedy });
    }
    const { athlete: athleteId, given_name: givenName, family_name: familyName } = cells;
    const person = { line, athleteId, givenName, familyName, sex: cells.sex, birthDate: cells.born };
    return { line, person: { ...person, club: cells.club }, values };
  });
  return problems.length > 0 ? { problems } : { lines };
}

function valuesOf({ values }: CsvRow<typeof COLUMNS>): PastValues {
  const { event, mark, wind, implement_g: implementGrams, date: onDate, meet: meetName, place } = values;
  return {
    ...{ event, unit: mark.unit, mark: mark.value, wind, indoor: values.indoor === 'yes' },
    ...{ implementGrams, onDate, meetName, place },
  };
}

/** The same for equal results of one athlete; the names of meets and the places are told in several ways. */
export function pastIdentity(athleteId: string, values: PastValues): string {
  const { event, unit, mark, wind, indoor, implementGrams, onDate } = values;
  return JSON.stringify([athleteId, event, unit, mark, wind, indoor, implementGrams, onDate]);
}

const NO_LINES: CsvProblem = {
  code: 'NO_LINES',
  line: 1,
  column: null,
  message: 'There is no result in the table.',
  remedy: 'Write one line for each result below the names of the columns.',
};
