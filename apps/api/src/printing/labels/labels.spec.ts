import { DE } from './de.js';
import { EN } from './en.js';
import { ES } from './es.js';
import { FI } from './fi.js';
import { FR } from './fr.js';
import { PRINT_LANGUAGES, wordingOf } from './labels.js';

describe('printed words', () => {
  it.each(Object.entries({ DE, ES, FI, FR }))('%s has every key, and none is blank', (_, catalogue) => {
    expect(Object.keys(catalogue).sort()).toEqual(Object.keys(EN).sort());
    expect(Object.values(catalogue).filter((text) => text.trim() === '')).toEqual([]);
  });

  it.each(PRINT_LANGUAGES)(
    'in %s say that referee, venue and local law decide, also at the jumps',
    (language) => {
      const { labels } = wordingOf(language, 'UTC');
      for (const caution of [labels.safety, labels.safetyAtJumps]) {
        expect(caution).toMatch(/local law|örtliches Recht|loi locale|ley local|paikallinen laki/);
      }
    },
  );

  // Unicode CLDR, as the runtime carries it.
  it.each([
    ['en', '48.62'],
    ['de', '48,62'],
    ['fr', '48,62'],
    ['es', '48,62'],
    ['fi', '48,62'],
  ] as const)('in %s a mark is %s', (language, mark) => {
    expect(wordingOf(language, 'UTC').decimal('48.62')).toBe(mark);
  });

  it('give the time of day at the place of the meet', () => {
    expect(wordingOf('de', 'Europe/Helsinki').moment(new Date('2026-06-06T12:00:00Z'))).toContain('15:00');
  });
});
