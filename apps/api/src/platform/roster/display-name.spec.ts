import { displayName, fullName, type Named } from './display-name.js';

const meet = { startsOn: '2026-05-30', minorsDisplay: 'initials' as const };

function athlete(birthDate: string | null, display: 'full' | 'initials' | 'bib' | null = null): Named {
  const named = { givenName: 'Éloïse', familyName: 'van der Merwede', birthDate, display };
  return { competitor: { bib: '17', listedName: null }, athlete: named };
}

function listed(listedName: string | null): Named {
  return { competitor: { bib: '17', listedName }, athlete: null };
}

describe('What the public sees of a name', () => {
  it.each([
    ['on the eighteenth birthday', '2008-05-30', 'Éloïse van der Merwede'],
    ['a day before it', '2008-05-31', 'É. V.'],
    ['of age on 1 March, born on 29 February', '2008-02-29', 'Éloïse van der Merwede'],
    ['without a birth date', null, 'É. V.'],
  ])('%s', (_when, birthDate, name) => {
    expect(displayName(athlete(birthDate), meet)).toBe(name);
  });

  it('is what the athlete chose, whatever the age', () => {
    expect(displayName(athlete('1980-01-01', 'bib'), meet)).toBe('#17');
    expect(displayName(athlete('2015-01-01', 'full'), meet)).toBe('Éloïse van der Merwede');
  });

  it.each([
    ['Ida', 'I.'],
    ['Ida Holm', 'I. H.'],
    ['Ida Ida', 'I. I.'],
    ['Ida  Maria van Holm', 'I. H.'],
    ['  ', '#17'],
    [null, '#17'],
    ['👩🏽‍🚀 Star', '👩🏽‍🚀. S.'],
  ])('of a listed name %p is %p', (name, shown) => {
    expect(displayName(listed(name), meet)).toBe(shown);
  });

  it('is never the whole name of somebody hidden', () => {
    for (const minorsDisplay of ['initials', 'bib'] as const) {
      expect(displayName(listed('Ida Holm'), { ...meet, minorsDisplay })).not.toContain('Holm');
    }
  });
});

describe('The whole name', () => {
  it('is there for officials, and null where none was given', () => {
    expect(fullName(athlete(null))).toBe('Éloïse van der Merwede');
    expect(fullName(listed(null))).toBeNull();
  });
});
