import { FOUL_CODES } from '#rules';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { en } from './en.js';
import { CATALOGUES, chosenLanguage, firstKnown, LANGUAGES, t, tCode, type Language } from './languages.js';
import { ACCOUNT_CATALOGUES } from './account/words.js';
import { NOTEBOOK_CATALOGUES } from './notebook/words.js';
import { ENTRIES_CATALOGUES } from './entries/words.js';
import { OFFICE_CATALOGUES } from './office/words.js';

/** Of the desk, and of the pages beside it. */
const PAGES: Readonly<Record<string, Readonly<Record<Language, Readonly<Record<string, string>>>>>> = {
  desk: CATALOGUES,
  account: ACCOUNT_CATALOGUES,
  office: OFFICE_CATALOGUES,
  notebook: NOTEBOOK_CATALOGUES,
  entries: ENTRIES_CATALOGUES,
};
const cases = Object.keys(PAGES).flatMap((page) => LANGUAGES.map((language) => [page, language] as const));

function placesIn(text: string): string {
  return (text.match(/\{\w+\}/g) ?? []).sort().join(' ');
}

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'build' || entry.name === 'public' ? [] : sources(path);
    return /\.tsx?$/.test(entry.name) && !/\.spec\.ts$/.test(entry.name) ? [path] : [];
  });
}

describe('the catalogues', () => {
  it.each(cases)('of the %s say the same things in %s, each with something in it', (page, language) => {
    const labels = PAGES[page]![language];
    const keys = Object.keys(PAGES[page]!.en);
    expect(Object.keys(labels).sort()).toEqual(keys.sort());
    expect(keys.filter((key) => labels[key]!.trim() === '')).toEqual([]);
  });

  it.each(cases)('of the %s put the same into them in %s', (page, language) => {
    const [labels, english] = [PAGES[page]![language], PAGES[page]!.en];
    const keys = Object.keys(english);
    expect(keys.filter((key) => placesIn(labels[key]!) !== placesIn(english[key]!))).toEqual([]);
  });

  it('have a word for every reason of a failure', () => {
    expect(FOUL_CODES.filter((code) => !(`foul.${code}` in en))).toEqual([]);
  });

  it('have no label that nothing shows', () => {
    const web = join(import.meta.dirname, '..');
    const wording = join(web, '..', '..', 'libs', 'wording', 'src');
    const catalogue = /(labels|wording\/src)\/(\w+\/)?(en|de|fr|es|fi)\.ts$/;
    const text = [...sources(web), ...sources(wording)]
      .filter((path) => !catalogue.test(path))
      .map((path) => readFileSync(path, 'utf8'))
      .join('\n');
    const isShown = (key: string): boolean => {
      const [prefix = ''] = key.split('.');
      return (
        text.includes(`'${key}'`) ||
        text.includes(`\`${prefix}.\${`) ||
        text.includes(`tCode('${prefix}'`) ||
        text.includes(`oCode('${prefix}'`) ||
        text.includes(`nCode('${prefix}'`) ||
        text.includes(`eCode('${prefix}'`)
      );
    };
    const keys = Object.values(PAGES).flatMap(({ en: english }) => Object.keys(english));
    expect(keys.filter((key) => !isShown(key))).toEqual([]);
  });
});

describe('a label', () => {
  afterEach(() => {
    chosenLanguage.value = null;
  });

  it('is in the language that was chosen, with what belongs into it', () => {
    chosenLanguage.value = 'de';
    expect(t('call.round', { round: 2, rounds: 6 })).toBe('Durchgang 2 von 6');
  });

  it('of a code that is newer than this page is the code', () => {
    expect(tCode('foul', 'SOMETHING_NEW')).toBe('SOMETHING_NEW');
  });

  it('is in the first language that the device wishes and there is', () => {
    expect(firstKnown(['sv-SE', 'fi-FI', 'en'])).toBe('fi');
    expect(firstKnown(['sv'])).toBe('en');
  });
});
