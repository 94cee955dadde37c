import { createHash } from 'node:crypto';
import { athletes, clubs, type AthleteRow, type Reads, type Sex } from '#persistence';
import { isDate } from '#rules';
import type { CsvProblem } from '../platform/csv/csv-problem.js';
import { oneOf, optional, plainText } from '../platform/csv/csv-rows.js';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { PersonsReader, type PersonDecision, type PersonLine, type TablePersons } from './table-persons.js';
import { tableClubs, type ClubDecision, type TableClubs } from './table-clubs.js';

/** The columns that name an athlete and the club, in every table. */
export const PERSON_COLUMNS = {
  athlete: optional('the id of an athlete', (cell) => uuidOf('Athlete', cell)),
  family_name: optional('a name that begins like no formula, at most 120 characters', plainText(120)),
  given_name: optional('a name that begins like no formula, at most 120 characters', plainText(120)),
  sex: optional('W, M or X', oneOf<Sex>(['W', 'M', 'X'])),
  born: optional('a day as YYYY-MM-DD', (cell) => (isDate(cell) && cell >= '1900-01-01' ? cell : null)),
  club: optional('the name of a club, at most 200 characters', plainText(200)),
};

export interface TableDecisions {
  readonly athletes: readonly PersonDecision[];
  readonly clubs: readonly ClubDecision[];
}

/** Persons and clubs of a table, against what is on record at this moment. */
export interface TableNames {
  readonly clubs: TableClubs;
  readonly persons: TablePersons;
  readonly problems: readonly CsvProblem[];
  /** What the decisions are about: another one when somebody or some club that matters has changed. */
  readonly fingerprint: string;
}

/** The table itself, and the lines in which somebody or some club is named. */
export interface NamedLines {
  readonly source: CsvSource;
  readonly persons: readonly PersonLine[];
  readonly clubs: readonly { readonly line: number; readonly club: string | null }[];
}

/** Two statements, however long the table is. */
export async function readNames(
  at: Reads,
  organisationId: string,
  lines: NamedLines,
  decisions: TableDecisions,
): Promise<TableNames> {
  const known = await athletes.all(at, organisationId);
  const knownClubs = await clubs.all(at, organisationId);
  const read = (decided: TableDecisions) => {
    const ofTable = tableClubs(organisationId, lines.clubs, knownClubs, decided.clubs);
    const persons = new PersonsReader(organisationId, known, ofTable, decided.athletes).read(lines.persons);
    return { clubs: ofTable, persons };
  };
  // What is asked first is asked before anything is decided: a club that is decided may bring up a person.
  const asked = read({ athletes: [], clubs: [] });
  const isDecided = decisions.athletes.length + decisions.clubs.length > 0;
  const names = isDecided ? read(decisions) : asked;
  return {
    ...names,
    problems: [...names.clubs.problems, ...names.persons.problems],
    fingerprint: fingerprintOf(lines, asked.clubs, asked.persons),
  };
}

/** Of a table about which nothing is decided yet: whoever is not certain counts as new there. */
function fingerprintOf(
  { source, persons: lines, clubs: clubLines }: NamedLines,
  { of: clubOf, questions: ofClubs }: TableClubs,
  { of, added, questions }: TablePersons,
): string {
  const fresh = new Set(added.map(({ id }) => id));
  const found = lines.flatMap(({ line }) => {
    const row = of(line);
    return row && !fresh.has(row.id) ? [[line, ...rowParts(row)]] : [];
  });
  const known = clubLines.map(({ club }) => clubOf(club).clubId);
  const persons = questions.map(({ line, candidates }) => [
    line,
    candidates.map(({ athlete, line: above, why }) => [why, above, athlete && rowParts(athlete)]),
  ]);
  const asked = ofClubs.map(({ name, candidates }) => [name, candidates.map((one) => [one.id, one.name])]);
  return createHash('sha256')
    .update(source)
    .update(JSON.stringify([found, known, persons, asked]))
    .digest('hex');
}

function rowParts({ id, givenName, familyName, sex, birthDate, clubId }: AthleteRow): unknown[] {
  return [id, givenName, familyName, sex, birthDate, clubId];
}

/** What was asked and not decided. */
export function undecided({ persons, clubs: ofTable }: TableNames): CsvProblem[] {
  const person = persons.questions.filter(({ isDecided }) => !isDecided);
  const club = ofTable.questions.filter(({ isDecided }) => !isDecided);
  return [
    ...club.map(({ line }) => ({ ...CLUB_UNDECIDED, line })),
    ...person.map(({ line }) => ({ ...PERSON_UNDECIDED, line })),
  ];
}

const CLUB_UNDECIDED = {
  code: 'DECISION_MISSING',
  column: 'club',
  message: 'The club is not on record, and nobody has decided what it is.',
  remedy: 'Say whether it is one on record, a new one, or is only written down.',
} as const;

const PERSON_UNDECIDED = {
  code: 'DECISION_MISSING',
  column: 'family_name',
  message: 'Somebody like this is known already, and nobody has decided whether it is the same.',
  remedy: 'Say whether it is the same person or a new one.',
} as const;
