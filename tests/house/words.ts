import type { SourceFile } from './repository.js';

/** Words that have no place in the repository, put together here so that this file does not hold them itself. */
const BANNED: readonly { readonly word: RegExp; readonly because: string }[] = [
  { word: new RegExp('\\b(TO' + 'DO|FIX' + 'ME|HA' + 'CK)\\b'), because: 'it is finished, or it is not in' },
  { word: new RegExp('not (yet )?imple' + 'mented', 'i'), because: 'a stub is not called done' },
  {
    word: new RegExp('\\b(it|test|describe)\\.(on' + 'ly|sk' + 'ip|to' + 'do|fail' + 'ing)\\b'),
    because: 'every test runs',
  },
  { word: new RegExp('\\b([xf](it|test|describe))\\('), because: 'every test runs' },
  {
    word: new RegExp('(^|[\\s"\'`(=])/(wo' + 'rk|ro' + 'ot|ho' + 'me|Us' + 'ers)/'),
    because: 'a path of one machine means nothing on another',
  },
  {
    word: new RegExp('registry\\.[a-z]+\\.(org|com)'),
    because: 'where packages come from is not ours to say',
  },
  {
    word: new RegExp('ts-(ig' + 'nore|noch' + 'eck)'),
    because: 'the compiler is right, or the line says why it is not',
  },
  { word: /^(<{7}|>{7}) /, because: 'a merge was left half done' },
];

/** Each banned word in the file, as a sentence. */
export function bannedWordsIn(file: SourceFile): string[] {
  return file.text.split('\n').flatMap((line, index) =>
    BANNED.flatMap(({ word, because }) => {
      const found = word.exec(line);
      return found ? [`${file.path}:${index + 1} says “${found[0].trim()}”: ${because}`] : [];
    }),
  );
}

/** Names of files that say nothing about what is in them. */
const EMPTY_NAMES = /(^|[/.-])(utils?|helpers?|common|manager|base|misc|shared-code)([.-]|$)/;

export function isEmptyName(path: string): boolean {
  return EMPTY_NAMES.test(path.split('/').at(-1) ?? '');
}
