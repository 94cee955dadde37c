import {
  recordScope,
  startingMarks,
  type AthleteRow,
  type ClubRow,
  type Reads,
  type Sex,
} from '#persistence';
import {
  DISTANCE_EVENT_CODES,
  isDate,
  OPEN_AGE,
  parseMark,
  parseWind,
  VERTICAL_EVENT_CODES,
  type EventCode,
} from '#rules';
import { toldProblems, type CsvProblem } from '../platform/csv/csv-problem.js';
import { filled, oneOf, optional, plainText, readCsv, type CsvRow } from '../platform/csv/csv-rows.js';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { identityOf, startingProblems, type StartingValues } from './starting-problems.js';

const EVENTS: readonly EventCode[] = [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES];
const GRAMS = /^[1-9]\d{0,4}$/;

/** The columns of a table of starting marks. */
const COLUMNS = {
  event: filled(`one of ${EVENTS.join(', ')}`, (cell) => eventIn(cell)),
  mark: filled('a mark like 61.10 or 47-06.25', parseMark),
  sex: filled('W, M or X', oneOf<Sex>(['W', 'M', 'X'])),
  date: filled('a day as YYYY-MM-DD', (cell) => (isDate(cell) && cell >= '1900-01-01' ? cell : null)),
  wind: optional('a wind like +1.3, or NWI', (cell) => (parseWind(cell) === null ? null : cell)),
  indoor: optional('yes or no', oneOf(['yes', 'no'])),
  implement_g: optional('whole grams, at most 99999', (cell) => (GRAMS.test(cell) ? Number(cell) : null)),
  age: optional('an age category like U18', plainText(40)),
  place: optional('text that begins like no formula, at most 200 characters', plainText(200)),
  club: optional('the name of a club', plainText(200)),
  athlete: optional('the id of an athlete', (cell) => uuidOf('Athlete', cell)),
  family_name: optional('a name', plainText(120)),
  given_name: optional('a name', plainText(120)),
  born: optional('a day as YYYY-MM-DD', (cell) => (isDate(cell) ? cell : null)),
};

function eventIn(cell: string): EventCode | null {
  const code = cell.toLowerCase().replaceAll(/[ _]/g, '-');
  return EVENTS.find((event) => event === code) ?? null;
}

type Row = CsvRow<typeof COLUMNS>;

/** The fields of a starting mark by the columns in which they stand. */
const COLUMN_OF: Readonly<Record<keyof StartingValues, keyof typeof COLUMNS>> = {
  ...{ clubId: 'club', meetId: 'club', athleteId: 'athlete', event: 'event', unit: 'mark', mark: 'mark' },
  ...{ wind: 'wind', indoor: 'indoor', implementGrams: 'implement_g', sex: 'sex', age: 'age' },
  ...{ onDate: 'date', place: 'place' },
};

/** What holds for every line of a table. */
export interface TableContext {
  readonly organisationId: string;
  readonly meetId: string | null;
  readonly clubId: string | null;
  /** What the same table brought before does not stand in its way. */
  readonly importId: string;
  /** `YYYY-MM-DD` */
  readonly today: string;
}

export interface StartingLine {
  readonly line: number;
  readonly values: StartingValues;
}

export type StartingTable =
  | { readonly lines: readonly StartingLine[] }
  | { readonly problems: readonly CsvProblem[] };

/** The starting marks of a table, or everything that is wrong with it. */
export async function startingTable(
  at: Reads,
  source: CsvSource,
  context: TableContext,
): Promise<StartingTable> {
  const read = readCsv(source, COLUMNS);
  if ('problems' in read) return read;
  if (read.rows.length === 0) return { problems: [NO_LINES] };
  const known = await knownNames(at, read.rows, context);
  const problems: CsvProblem[] = [];
  const lines = read.rows.map((row): StartingLine => {
    const { values } = row;
    const { clubId, athleteId } = ownersOf(row, known, context, problems);
    const mark: StartingValues = {
      ...{ clubId, athleteId, meetId: context.meetId },
      ...{ event: values.event, unit: values.mark.unit, mark: values.mark.value, wind: values.wind },
      ...{ indoor: values.indoor === 'yes', implementGrams: values.implement_g, sex: values.sex },
      ...{ age: values.age ?? OPEN_AGE, onDate: values.date, place: values.place },
    };
    const isNamed = values.club !== null || values.athlete !== null || values.family_name !== null;
    for (const { code, field, message, remedy } of startingProblems(mark, context.today)) {
      // Who is named and not found is told already.
      if (code === 'IN_NO_LIST' && isNamed) continue;
      problems.push({ code, line: row.line, column: COLUMN_OF[field], message, remedy });
    }
    return { line: row.line, values: mark };
  });
  if (problems.length === 0) problems.push(...(await repeated(at, lines, context)));
  return problems.length > 0 ? { problems: toldProblems(problems) } : { lines };
}

interface KnownNames {
  readonly clubs: ReadonlyMap<string, ClubRow>;
  readonly athletes: readonly AthleteRow[];
}

async function knownNames(
  at: Reads,
  rows: readonly Row[],
  { organisationId }: TableContext,
): Promise<KnownNames> {
  const clubs = [...new Set(rows.flatMap(({ values }) => values.club ?? []))];
  const families = [...new Set(rows.flatMap(({ values }) => values.family_name ?? []))];
  const found = await recordScope.clubsNamed(at, organisationId, clubs);
  const ids = [...new Set(rows.flatMap(({ values }) => values.athlete ?? []))];
  const named = await recordScope.athletesNamed(at, organisationId, families, ids);
  return { clubs: new Map(found.map((club) => [club.name, club])), athletes: named };
}

function ownersOf(
  { line, values }: Row,
  { clubs, athletes }: KnownNames,
  context: TableContext,
  problems: CsvProblem[],
): Pick<StartingValues, 'clubId' | 'athleteId'> {
  const club = values.club === null ? null : (clubs.get(values.club) ?? null);
  if (values.club !== null && club === null) {
    const remedy = 'Write the name as it is on record, or create the club first.';
    problems.push({ code: 'CLUB_UNKNOWN', line, column: 'club', message: 'There is no such club.', remedy });
  }
  const clubId = club?.id ?? (values.club === null ? context.clubId : null);
  return { clubId, athleteId: holderOf({ line, values }, athletes, problems) };
}

function holderOf(
  { line, values }: Row,
  athletes: readonly AthleteRow[],
  problems: CsvProblem[],
): string | null {
  const { athlete: id, family_name: family, given_name: given, born } = values;
  const problem = (code: string, column: string, message: string, remedy: string): null => {
    problems.push({ code, line, column, message, remedy });
    return null;
  };
  if (id === null && family === null) {
    if (given === null && born === null) return null;
    return problem(
      'NAME_INCOMPLETE',
      'family_name',
      'The family name is missing.',
      'Write the whole name, or none.',
    );
  }
  const found = athletes.filter((athlete) =>
    id !== null
      ? athlete.id === id
      : athlete.familyName === family &&
        (given === null || athlete.givenName === given) &&
        (born === null || athlete.birthDate === born),
  );
  const column = id === null ? 'family_name' : 'athlete';
  if (found.length === 1) return found[0]!.id;
  return found.length === 0
    ? problem(
        'ATHLETE_UNKNOWN',
        column,
        'There is no such athlete on record.',
        'Create the athlete first, or leave the holder out: no other names are kept.',
      )
    : problem(
        'ATHLETE_AMBIGUOUS',
        column,
        'Several athletes are called so.',
        'Write the day of birth, or the id.',
      );
}

/** Marks that are there already, or twice in the table. */
async function repeated(
  at: Reads,
  lines: readonly StartingLine[],
  { organisationId, importId }: TableContext,
): Promise<CsvProblem[]> {
  const idsOf = (field: 'clubId' | 'meetId' | 'athleteId'): string[] => [
    ...new Set(lines.flatMap(({ values }) => values[field] ?? [])),
  ];
  const owners = { clubs: idsOf('clubId'), meets: idsOf('meetId'), athletes: idsOf('athleteId') };
  const stored = await startingMarks.counting(at, organisationId, owners);
  const others = stored.filter((row) => row.importId !== importId);
  const seen = new Map(others.map((row) => [identityOf(row), 'on record']));
  return lines.flatMap(({ line, values }): CsvProblem[] => {
    const key = identityOf(values);
    const where = seen.get(key);
    seen.set(key, `in line ${line}`);
    if (where === undefined) return [];
    const message = `The same mark is ${where} already.`;
    return [{ code: 'KNOWN_ALREADY', line, column: null, message, remedy: 'Take the line out.' }];
  });
}

const NO_LINES: CsvProblem = {
  code: 'NO_LINES',
  line: 1,
  column: null,
  message: 'There is no mark in the table.',
  remedy: 'Write one line for each mark below the names of the columns.',
};
