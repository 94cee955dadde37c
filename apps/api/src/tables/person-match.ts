import anyAscii from 'any-ascii';
import { distance } from 'fastest-levenshtein';

/** Somebody as a table or the records name them. */
export interface NamedPerson {
  readonly givenName: string;
  readonly familyName: string;
  /** `YYYY-MM-DD`; `null`: not known. */
  readonly birthDate: string | null;
  readonly sex: string | null;
  /** Key of the club; `null`: none, or not known. */
  readonly club: string | null;
}

/** Why somebody may be the same person. */
export type Likeness = 'same name' | 'names exchanged' | 'similar name' | 'initial' | 'same birth date';

export interface Alike<Person> {
  readonly person: Person;
  readonly why: Likeness;
}

/** Letters alone, without marks and case: `O’Mälley-Ångström` and `omalley angstrom` are one. */
export function nameKey(name: string): string {
  return anyAscii(name.normalize('NFKC'))
    .toLowerCase()
    .replaceAll(/[^a-z0-9]/g, '');
}

interface Keyed<Person> {
  readonly person: Person;
  readonly given: string;
  readonly family: string;
}

/** From so many letters on two of them may differ. */
const LONG_NAME = 9;
/** Longer names are compared by their beginnings: the keys grow with the square of the length. */
const KEYED_LETTERS = 24;

/**
 * Who may be whom. Two are taken for one without a question when both names agree letter for letter, marks and case
 * aside, the birth dates are known and equal and the sex does not differ. Whoever comes close is a question for a
 * person: the same or exchanged names; names that differ by a letter (two from nine letters on), an initial for a
 * given name, or another family name with the same given name and club, each where the birth dates do not
 * contradict. Common sense, no published source. Only names that share a key are compared, so that ten thousand lines
 * against as many athletes take a moment (SymSpell's idea: a name and all that is left of it without one letter).
 */
export class PersonIndex<Person extends NamedPerson> {
  private readonly byName = new Map<string, Keyed<Person>[]>();
  private readonly byPart = new Map<string, Keyed<Person>[]>();
  private readonly byBirth = new Map<string, Keyed<Person>[]>();

  constructor(persons: Iterable<Person> = []) {
    for (const person of persons) this.add(person);
  }

  add(person: Person): void {
    const keyed = keyedOf(person);
    put(this.byName, `${keyed.family} ${keyed.given}`, keyed);
    for (const part of partsOf(keyed.family)) put(this.byPart, part, keyed);
    if (person.birthDate !== null) put(this.byBirth, `${person.birthDate} ${keyed.given}`, keyed);
  }

  /** Those who are certainly this person; more than one: somebody is on record twice. */
  same(wanted: NamedPerson): Person[] {
    const { family, given } = keyedOf(wanted);
    if (wanted.birthDate === null) return [];
    return (this.byName.get(`${family} ${given}`) ?? [])
      .map(({ person }) => person)
      .filter((one) => one.birthDate === wanted.birthDate && !differs(one.sex, wanted.sex));
  }

  /** Those who may be this person, the likeliest first. */
  alike(wanted: NamedPerson): Alike<Person>[] {
    const keyed = keyedOf(wanted);
    const found = new Map<Keyed<Person>, Likeness>();
    const note = (others: readonly Keyed<Person>[] | undefined): void => {
      for (const other of others ?? []) {
        const why = found.has(other) ? null : likeness(keyed, other);
        if (why) found.set(other, why);
      }
    };
    note(this.byName.get(`${keyed.family} ${keyed.given}`));
    note(this.byName.get(`${keyed.given} ${keyed.family}`));
    for (const part of partsOf(keyed.family)) note(this.byPart.get(part));
    if (wanted.birthDate !== null) note(this.byBirth.get(`${wanted.birthDate} ${keyed.given}`));
    return [...found]
      .map(([{ person }, why]) => ({ person, why }))
      .toSorted((a, b) => ORDER.indexOf(a.why) - ORDER.indexOf(b.why));
  }
}

const ORDER: readonly Likeness[] = [
  ...(['same name', 'names exchanged', 'similar name', 'initial', 'same birth date'] as const),
];

function likeness(wanted: Keyed<NamedPerson>, other: Keyed<NamedPerson>): Likeness | null {
  const [one, two] = [wanted.person, other.person];
  const dates = datesAgree(one.birthDate, two.birthDate);
  const sameClub = one.club !== null && one.club === two.club;
  if (wanted.family === other.family && wanted.given === other.given) {
    return dates !== 'no' || sameClub ? 'same name' : null;
  }
  if (dates === 'no' || differs(one.sex, two.sex)) return null;
  if (wanted.family === other.given && wanted.given === other.family) return 'names exchanged';
  if (isSimilar(wanted, other)) return 'similar name';
  if (wanted.family === other.family && isInitial(wanted.given, other.given)) return 'initial';
  const isRenamed = dates === 'yes' && wanted.given === other.given && sameClub;
  return isRenamed ? 'same birth date' : null;
}

function isSimilar(wanted: Keyed<NamedPerson>, other: Keyed<NamedPerson>): boolean {
  const [a, b] = [`${wanted.family} ${wanted.given}`, `${other.family} ${other.given}`];
  const most = Math.min(a.length, b.length) - 1 >= LONG_NAME ? 2 : 1;
  return Math.abs(a.length - b.length) <= most && distance(a, b) <= most;
}

function isInitial(one: string, other: string): boolean {
  const [short, long] = one.length < other.length ? [one, other] : [other, one];
  return short.length === 1 && long.startsWith(short);
}

/** `close`: day and month exchanged, or one digit another. */
function datesAgree(one: string | null, other: string | null): 'yes' | 'unknown' | 'close' | 'no' {
  if (one === null || other === null) return 'unknown';
  if (one === other) return 'yes';
  const [year, month, day] = one.split('-');
  if (`${year}-${day}-${month}` === other) return 'close';
  return distance(one, other) === 1 ? 'close' : 'no';
}

function differs(one: string | null, other: string | null): boolean {
  return one !== null && other !== null && one !== other;
}

function keyedOf<Person extends NamedPerson>(person: Person): Keyed<Person> {
  return { person, given: nameKey(person.givenName), family: nameKey(person.familyName) };
}

/** The name and whatever is left of it without one of its letters. */
function partsOf(key: string): Set<string> {
  const start = key.slice(0, KEYED_LETTERS);
  const parts = new Set([start]);
  for (let at = 0; at < start.length; at += 1) parts.add(start.slice(0, at) + start.slice(at + 1));
  return parts;
}

function put<Value>(map: Map<string, Value[]>, key: string, value: Value): void {
  const there = map.get(key);
  if (there) there.push(value);
  else map.set(key, [value]);
}
