import type { CompetitionRow, Sex } from '#persistence';
import { parseMark } from '#rules';
import type { CsvProblem } from '../platform/csv/csv-problem.js';
import { filled, oneOf, optional, plainText, readCsv, type CsvRow } from '../platform/csv/csv-rows.js';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { nameKey } from './person-match.js';
import type { PersonLine } from './table-persons.js';
import { PERSON_COLUMNS } from './table-reading.js';

const GRAMS = /^[1-9]\d{0,4}$/;
const TEXT = 'text that begins like no formula';

/** The columns of a table of entries; what is written out has the same. */
export const ENTRY_COLUMNS = {
  competition: filled(`the title of a competition of the meet, or its id`, plainText(200)),
  ...PERSON_COLUMNS,
  listed_name: optional(`${TEXT}, at most 200 characters`, plainText(200)),
  bib: optional(`${TEXT}, at most 64 characters`, plainText(64)),
  seed_mark: optional('a mark like 61.10 or 47-06.25', parseMark),
  flight: optional(`${TEXT}, at most 64 characters`, plainText(64)),
  guest: optional('yes or no', oneOf(['yes', 'no'])),
  implement_g: optional('whole grams, at most 99999', (cell) => (GRAMS.test(cell) ? Number(cell) : null)),
};

/** Fields of an entry by the columns in which they stand. */
export const ENTRY_COLUMN_OF: Readonly<Record<string, keyof typeof ENTRY_COLUMNS>> = {
  ...{ competitionId: 'competition', athleteId: 'family_name', clubId: 'club', bib: 'bib' },
  ...{ flight: 'flight', seedMark: 'seed_mark' },
};

/** One line of the table, and the competition that it names. */
export interface EntryLine {
  readonly line: number;
  readonly competition: CompetitionRow;
  readonly values: CsvRow<typeof ENTRY_COLUMNS>['values'];
  /** Null: the entry is for a name alone. */
  readonly person: PersonLine | null;
}

export type EntryTable =
  | { readonly lines: readonly EntryLine[] }
  | { readonly problems: readonly CsvProblem[] };

/** What can be said of a table of entries without knowing who anybody is. */
export function entryTable(source: CsvSource, competitions: readonly CompetitionRow[]): EntryTable {
  const read = readCsv(source, ENTRY_COLUMNS);
  if ('problems' in read) return read;
  if (read.rows.length === 0) return { problems: [NO_LINES] };
  const byName = competitionsByName(competitions);
  const problems: CsvProblem[] = [];
  const lines = read.rows.flatMap(({ line, values }): EntryLine[] => {
    const found = byName.get(keyOf(values.competition)) ?? [];
    const [competition] = found;
    if (!competition) problems.push({ ...UNKNOWN, line });
    else if (found.length > 1) problems.push({ ...AMBIGUOUS, line });
    const person = values.listed_name === null ? personOf(line, values, competition) : null;
    const isNamed = [values.athlete, values.family_name, values.given_name].some((one) => one !== null);
    if (values.listed_name !== null && isNamed) problems.push({ ...TWO_NAMES, line });
    if (person && !isNamed) problems.push({ ...NAME_MISSING, line });
    if (!competition) return [];
    if (values.seed_mark !== null && values.seed_mark.unit !== competition.unit)
      problems.push({ ...WRONG_UNIT, line });
    return [{ line, competition, values, person }];
  });
  return problems.length > 0 ? { problems } : { lines };
}

function personOf(
  line: number,
  values: CsvRow<typeof ENTRY_COLUMNS>['values'],
  competition: CompetitionRow | undefined,
): PersonLine {
  const { athlete, given_name: givenName, family_name: familyName, born, club } = values;
  const sex = values.sex ?? sexOf(competition);
  return { line, athleteId: athlete, givenName, familyName, sex, birthDate: born, club };
}

/** A competition for women or men says who its athletes are; one for both does not. */
function sexOf(competition: CompetitionRow | undefined): Sex | null {
  const sex = competition?.categorySex ?? null;
  return sex === 'X' ? null : sex;
}

/** By id and by title, marks and case aside. */
function competitionsByName(competitions: readonly CompetitionRow[]): ReadonlyMap<string, CompetitionRow[]> {
  const byName = new Map<string, CompetitionRow[]>();
  for (const row of competitions) {
    byName.set(row.id, [row]);
    const key = nameKey(row.title);
    byName.set(key, [...(byName.get(key) ?? []), row]);
  }
  return byName;
}

function keyOf(cell: string): string {
  return uuidOf('Competition', cell) ?? nameKey(cell);
}

const NO_LINES: CsvProblem = {
  code: 'NO_LINES',
  line: 1,
  column: null,
  message: 'There is no entry in the table.',
  remedy: 'Write one line for each entry below the names of the columns.',
};

const UNKNOWN = {
  code: 'COMPETITION_UNKNOWN',
  column: 'competition',
  message: 'The meet has no such competition.',
  remedy: 'Write its title as the meet has it, or its id.',
} as const;

const AMBIGUOUS = {
  code: 'COMPETITION_AMBIGUOUS',
  column: 'competition',
  message: 'Several competitions of the meet are called so.',
  remedy: 'Write the id of the one that is meant.',
} as const;

const NAME_MISSING = {
  code: 'NAME_INCOMPLETE',
  column: 'family_name',
  message: 'Nothing says who is entered.',
  remedy: 'Write the name, or the id of the athlete; or, for somebody who is on no record, `listed_name`.',
} as const;

const TWO_NAMES = {
  code: 'ATHLETE_OR_NAME',
  column: 'listed_name',
  message: 'An entry names an athlete or a name as it is written, one of the two.',
  remedy: 'Leave one of them out.',
} as const;

const WRONG_UNIT = {
  code: 'WRONG_UNIT',
  column: 'seed_mark',
  message: 'The mark is not in the unit of the competition.',
  remedy: 'Write it as it was measured, in that unit; or leave it out.',
} as const;
