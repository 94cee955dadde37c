import fc from 'fast-check';
import { ClubIndex } from './club-match.js';
import { nameKey, PersonIndex, type NamedPerson } from './person-match.js';

function person(name: string, birthDate: string | null = null, more: Partial<NamedPerson> = {}): NamedPerson {
  const [givenName = '', familyName = ''] = name.split(' ');
  return { givenName, familyName, birthDate, sex: 'W', club: null, ...more };
}

const BORN = '2001-05-14';
const ON_RECORD = person('Aino Väisänen', BORN, { club: 'harriers' });

function found(wanted: NamedPerson): readonly unknown[] {
  const index = new PersonIndex([ON_RECORD]);
  return index.same(wanted).length > 0 ? ['same'] : index.alike(wanted).map(({ why }) => why);
}

describe('who may be whom', () => {
  it.each<[string, NamedPerson, readonly string[]]>([
    ['by both names and the birth date', person('Aino Väisänen', BORN), ['same']],
    ['without marks and in capitals', person('AINO VAISANEN', BORN), ['same']],
    ['without a birth date', person('Aino Väisänen'), ['same name']],
    ['with day and month exchanged', person('Aino Väisänen', '2001-14-05'), ['same name']],
    ['with a digit mistyped', person('Aino Väisänen', '2001-05-15'), ['same name']],
    ['as a namesake of another club and age', person('Aino Väisänen', '1987-11-02', { club: 'other' }), []],
    [
      'as a namesake of the same club',
      person('Aino Väisänen', '1987-11-02', { club: 'harriers' }),
      ['same name'],
    ],
    ['with the names in each other’s columns', person('Väisänen Aino', BORN), ['names exchanged']],
    ['a letter left out', person('Aino Väisänn', BORN), ['similar name']],
    ['a letter too many, no birth date', person('Aino Väissänen'), ['similar name']],
    ['two letters exchanged', person('Aino Väisäenn', BORN), ['similar name']],
    ['nearly so, of another age', person('Aino Väisänn', '1987-11-02'), []],
    ['nearly so, of the other sex', person('Aimo Väisänen', BORN, { sex: 'M' }), []],
    ['by an initial', person('A. Väisänen', BORN), ['initial']],
    ['married since', person('Aino Koskela', BORN, { club: 'harriers' }), ['same birth date']],
    ['born the same day, of another club', person('Aino Koskela', BORN), []],
    ['another person', person('Maud Ferrow', '1999-02-11'), []],
  ])('%s', (_how, wanted, expected) => {
    expect(found(wanted)).toEqual(expected);
  });

  it('finds whoever is one letter away, wherever the letter is', () => {
    const letters = fc.string({ unit: fc.constantFrom(...'abcdefgåøñ'), minLength: 4, maxLength: 12 });
    fc.assert(
      fc.property(letters, letters, fc.nat(), (givenName, familyName, place) => {
        const known = { ...ON_RECORD, givenName, familyName };
        const at = place % familyName.length;
        const without = familyName.slice(0, at) + familyName.slice(at + 1);
        const index = new PersonIndex([known]);
        const alike =
          index.alike({ ...known, familyName: without }).length +
          index.same({ ...known, familyName: without }).length;
        expect(alike).toBeGreaterThan(0);
      }),
      { numRuns: process.env['LONG'] === '1' ? 10_000 : 300 },
    );
  });

  it('makes one key of what is written in several ways', () => {
    expect(['O’Mälley-Ångström', 'OMALLEY ANGSTROM', 'omalley  angström'].map(nameKey)).toEqual(
      Array(3).fill('omalleyangstrom'),
    );
  });
});

it('a club is known by its name without marks and case, and others come close', () => {
  const clubs = ['Heron Field AC', 'Heron Lane AC', 'Mill Throwers'].map((name, at) => {
    return { organisationId: 'o', id: String(at), name };
  });
  const index = new ClubIndex(clubs);
  expect(index.named('HERON FIELD A.C.')?.id).toBe('0');
  expect(index.named('Heron')).toBeNull();
  expect(index.alike('Mill Throwrs').map(({ id }) => id)).toEqual(['2']);
  expect(index.alike('Heron').map(({ id }) => id)).toEqual(['0', '1']);
});
