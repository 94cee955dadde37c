import { PATHS, readSource } from './repository.js';
import { bannedWordsIn, isEmptyName } from './words.js';

/** Written by tools or data from outside: the words in it are not ours. */
const NOT_WRITTEN = /^package-lock\.json$|^tests\/cases\/|\.(png|jpg|woff2?|ttf|ico|gz)$/;

describe('words', () => {
  it('that mean unfinished, skipped or one machine are nowhere', () => {
    const files = PATHS.filter((path) => !NOT_WRITTEN.test(path)).map(readSource);
    expect(files.flatMap(bannedWordsIn)).toEqual([]);
  });

  it('name every file by what is in it', () => {
    expect(PATHS.filter(isEmptyName)).toEqual([]);
  });
});

describe('the check of words', () => {
  // Each is put together, so that the files of this repository stay free of them.
  it.each([
    ['// TO', 'DO: later'],
    ['// FIX', 'ME'],
    ['throw new Error("not imple', 'mented")'],
    ['it.on', 'ly("…", () => {})'],
    ['describe.sk', 'ip("…", () => {})'],
    ['  x', 'it("…", () => {})'],
    ['const path = "/wo', 'rk/main";'],
    ['// @ts-ig', 'nore'],
  ])('finds %s%s', (before, after) => {
    expect(bannedWordsIn({ path: 'a.ts', text: `\n${before}${after}\n` })).toEqual([
      expect.stringMatching(/^a\.ts:2 says “/),
    ]);
  });

  it.each([
    'it("…", () => {});',
    'await it.next();',
    'exit(1);',
    'import { a } from "./home/a.js";',
    'the last attempt was only a pass',
  ])('lets %s pass', (text) => {
    expect(bannedWordsIn({ path: 'a.ts', text })).toEqual([]);
  });

  it('knows a name that says nothing', () => {
    expect(['a/utils.ts', 'a/date-utils.ts', 'a/helpers.spec.ts', 'base.store.ts'].every(isEmptyName)).toBe(
      true,
    );
    expect(['a/basement.ts', 'common/mark.ts', 'a/series.ts'].some(isEmptyName)).toBe(false);
  });
});
