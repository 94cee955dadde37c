import type { AthleteRow, Sex } from '#persistence';
import type { CsvProblem } from '../platform/csv/csv-problem.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { nameKey, PersonIndex, type Alike, type Likeness, type NamedPerson } from './person-match.js';
import type { TableClubs } from './table-clubs.js';

/** Whom one line of a table names. */
export interface PersonLine {
  readonly line: number;
  readonly athleteId: string | null;
  readonly givenName: string | null;
  readonly familyName: string | null;
  readonly sex: Sex | null;
  readonly birthDate: string | null;
  /** As it is written. */
  readonly club: string | null;
}

export interface PersonDecision {
  /** On which the person stands first. */
  readonly line: number;
  readonly choice: 'same' | 'new';
  /** Of the two one, with `same`. */
  readonly athleteId: string | null;
  readonly sameLine: number | null;
}

export interface Candidate {
  /** Of the two one: on record, or further up in the table. */
  readonly athlete: AthleteRow | null;
  readonly line: number | null;
  readonly why: Likeness;
}

/** Somebody who may be on record, or further up in the table, already. */
export interface PersonQuestion {
  readonly line: number;
  readonly name: string;
  readonly birthDate: string | null;
  readonly club: string | null;
  readonly candidates: readonly Candidate[];
  readonly isDecided: boolean;
}

export interface TablePersons {
  readonly of: (line: number) => AthleteRow | null;
  readonly questions: readonly PersonQuestion[];
  readonly added: readonly AthleteRow[];
  readonly problems: readonly CsvProblem[];
}

interface Known extends NamedPerson {
  readonly row: AthleteRow;
}

/** Somebody who is certainly not on record under this name and date; a question, unless nobody comes close. */
interface Fresh extends NamedPerson {
  readonly line: number;
  readonly row: AthleteRow;
}

/**
 * Who the lines of a table are. Lines that name somebody alike in everything are one person, asked about once, on the
 * first. Somebody about whom nobody has decided is looked at as new.
 */
export class PersonsReader {
  private readonly byId: ReadonlyMap<string, AthleteRow>;
  private readonly known: PersonIndex<Known>;
  private readonly fresh = new PersonIndex<Fresh>();
  private readonly rows = new Map<number, AthleteRow>();
  private readonly seen = new Map<string, AthleteRow>();
  private readonly decided: ReadonlyMap<number, PersonDecision>;
  private readonly questions: PersonQuestion[] = [];
  private readonly added: AthleteRow[] = [];
  private readonly problems: CsvProblem[] = [];

  constructor(
    private readonly organisationId: string,
    athletes: readonly AthleteRow[],
    private readonly clubs: TableClubs,
    decisions: readonly PersonDecision[],
  ) {
    this.byId = new Map(athletes.map((row) => [row.id, row]));
    // Of whom the records were asked to forget nobody is reminded.
    const named = athletes.filter(({ erasedAt }) => erasedAt === null);
    this.known = new PersonIndex(named.map((row) => ({ ...row, club: row.clubId, row })));
    this.decided = new Map(decisions.map((one) => [one.line, one]));
  }

  read(lines: readonly PersonLine[]): TablePersons {
    for (const line of lines) {
      const row = line.athleteId === null ? this.named(line) : this.identified(line);
      if (row) this.rows.set(line.line, row);
    }
    const asked = new Set(this.questions.map(({ line }) => line));
    for (const { line } of this.decided.values()) {
      if (!asked.has(line)) this.problems.push({ ...NOT_ASKED, line });
    }
    const { questions, added, problems } = this;
    return { of: (line) => this.rows.get(line) ?? null, questions, added, problems };
  }

  private identified({ line, athleteId }: PersonLine): AthleteRow | null {
    const row = this.byId.get(athleteId!) ?? null;
    if (!row) this.problems.push({ ...ATHLETE_UNKNOWN, line });
    return row;
  }

  private named(line: PersonLine): AthleteRow | null {
    const { givenName, familyName, sex, birthDate } = line;
    if (givenName === null || familyName === null) {
      const column = givenName === null ? 'given_name' : 'family_name';
      this.problems.push({ ...NAME_INCOMPLETE, line: line.line, column });
      return null;
    }
    const { clubId, listedClub } = this.clubs.of(line.club);
    const person = { givenName, familyName, sex, birthDate, club: clubId ?? listedClub };
    const key = JSON.stringify([
      ...[nameKey(givenName), nameKey(familyName), birthDate, sex],
      birthDate === null ? person.club : null,
    ]);
    const row = this.seen.get(key) ?? this.decide(line, person);
    if (row) this.seen.set(key, row);
    return row;
  }

  private decide(line: PersonLine, person: NamedPerson): AthleteRow | null {
    const same = this.known.same(person);
    if (same.length === 1) return same[0]!.row;
    const candidates = candidatesOf(this.known.alike(person), this.fresh.alike(person));
    const decision = candidates.length > 0 ? (this.decided.get(line.line) ?? null) : null;
    if (candidates.length > 0) {
      const { givenName, familyName, birthDate } = person;
      const name = `${givenName} ${familyName}`;
      const question = { line: line.line, name, birthDate, club: line.club, candidates };
      this.questions.push({ ...question, isDecided: decision !== null });
    }
    const row = decision?.choice === 'same' ? this.chosen(decision, candidates) : this.made(line, person);
    if (row) this.fresh.add({ ...person, line: line.line, row });
    return row;
  }

  private chosen(
    { line, athleteId, sameLine }: PersonDecision,
    candidates: readonly Candidate[],
  ): AthleteRow | null {
    const chosen = candidates.find((one) =>
      athleteId === null ? one.line !== null && one.line === sameLine : one.athlete?.id === athleteId,
    );
    if (!chosen) this.problems.push({ ...NO_CANDIDATE, line });
    return chosen ? (chosen.athlete ?? this.rows.get(chosen.line!) ?? null) : null;
  }

  private made({ line, club }: PersonLine, person: NamedPerson): AthleteRow | null {
    const { givenName, familyName, birthDate } = person;
    if (person.sex === null) {
      this.problems.push({ ...SEX_MISSING, line });
      return null;
    }
    const row: AthleteRow = {
      ...{ organisationId: this.organisationId, id: uuidV7(), givenName, familyName, birthDate },
      ...{
        sex: person.sex as Sex,
        clubId: this.clubs.of(club).clubId,
        display: null,
        handedness: null,
        erasedAt: null,
      },
    };
    this.added.push(row);
    return row;
  }
}

function candidatesOf(known: readonly Alike<Known>[], fresh: readonly Alike<Fresh>[]): Candidate[] {
  return [
    ...known.map(({ person, why }) => ({ athlete: person.row, line: null, why })),
    ...fresh.map(({ person, why }) => ({ athlete: null, line: person.line, why })),
  ];
}

const ATHLETE_UNKNOWN = {
  code: 'ATHLETE_UNKNOWN',
  column: 'athlete',
  message: 'There is no such athlete on record.',
  remedy: 'Take the id from the records, or leave it out and write the name.',
} as const;

const NAME_INCOMPLETE = {
  code: 'NAME_INCOMPLETE',
  message: 'One of the two names is missing.',
  remedy: 'Write the whole name, or the id of the athlete.',
} as const;

const SEX_MISSING = {
  code: 'SEX_MISSING',
  column: 'sex',
  message: 'The athlete is new, and nothing says in which category he or she competes.',
  remedy: 'Write W, M or X.',
} as const;

const NOT_ASKED = {
  code: 'NOT_ASKED',
  column: null,
  message: 'There was nothing to decide about this line.',
  remedy: 'Take the decision out, or look at the table again.',
} as const;

const NO_CANDIDATE = {
  code: 'NO_CANDIDATE',
  column: null,
  message: 'It was decided that this is somebody who does not come close.',
  remedy: 'Choose one of those that are named with the question; or write the id into the table.',
} as const;
