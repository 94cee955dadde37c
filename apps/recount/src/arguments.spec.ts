import { readArguments } from './arguments.js';

describe('the command line', () => {
  it.each([
    [['a.json'], { kind: 'count', files: ['a.json'], json: false }],
    [['--json', 'a.json', '-'], { kind: 'count', files: ['a.json', '-'], json: true }],
    [['b.json', '--json', 'a.json'], { kind: 'count', files: ['b.json', 'a.json'], json: true }],
    [['--', '--json'], { kind: 'count', files: ['--json'], json: false }],
    [['--help'], { kind: 'help' }],
    [['a.json', '-h'], { kind: 'help' }],
    [[''], { kind: 'count', files: [''], json: false }],
  ])('%j', (words, expected) => {
    expect(readArguments(words)).toEqual(expected);
  });

  it.each([[[]], [['--json']], [['--jsno', 'a.json']], [['-x']], [['--json=yes', 'a.json']]])(
    '%j is a misuse',
    (words) => {
      expect(readArguments(words)).toEqual({ kind: 'misuse', message: expect.stringMatching(/./) });
    },
  );
});
