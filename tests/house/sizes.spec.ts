import { typeScriptFiles } from './repository.js';
import {
  FILE_LINES_EXPECTED,
  FILE_LINES_MAX,
  FUNCTION_LINES_MAX,
  isTooLong,
  linesOf,
  longFunctionsIn,
  SPEC_LINES_MAX,
} from './sizes.js';

const files = typeScriptFiles();

describe('sizes', () => {
  it(`no file is longer than ${FILE_LINES_MAX} lines, no test file than ${SPEC_LINES_MAX}`, () => {
    const long = files.filter(isTooLong);
    expect(long.map((file) => `${file.path} (${linesOf(file)})`)).toEqual([]);
  });

  it(`no function is longer than ${FUNCTION_LINES_MAX} lines`, () => {
    expect(files.flatMap(longFunctionsIn)).toEqual([]);
  });

  it(`names the files over ${FILE_LINES_EXPECTED} lines, which may hold two ideas`, () => {
    const sources = files.filter(({ path }) => !path.endsWith('.spec.ts'));
    const grown = sources.filter((file) => linesOf(file) > FILE_LINES_EXPECTED);
    if (grown.length > 0) {
      process.stderr.write(grown.map((file) => `${linesOf(file)} lines: ${file.path}\n`).join(''));
    }
    // A quarter of the files would be a habit and not an exception.
    expect(grown.length).toBeLessThan(sources.length / 4);
  });
});

describe('the check of sizes', () => {
  const body = 'f();\n'.repeat(FUNCTION_LINES_MAX);

  it('counts the last line, with and without its end', () => {
    expect(linesOf({ path: 'a.ts', text: 'a\nb\n' })).toBe(2);
    expect(linesOf({ path: 'a.ts', text: 'a\nb' })).toBe(2);
  });

  it('finds a file of one line too many', () => {
    const file = (path: string, lines: number) => ({ path, text: '\n'.repeat(lines) });
    expect(isTooLong(file('a.ts', FILE_LINES_MAX + 1))).toBe(true);
    expect(isTooLong(file('a.ts', FILE_LINES_MAX))).toBe(false);
    expect(isTooLong(file('a.spec.ts', SPEC_LINES_MAX + 1))).toBe(true);
    expect(isTooLong(file('a.spec.ts', SPEC_LINES_MAX))).toBe(false);
  });

  it.each([
    ['a function', `function long() {\n${body}}`, 'long'],
    ['an arrow', `const long = () => {\n${body}};`, 'long'],
    ['a method', `class A {\n  long() {\n${body}}\n}`, 'long'],
    ['a constructor', `class A {\n  constructor() {\n${body}}\n}`, 'constructor'],
    ['a test', `it('…', () => {\n${body}});`, 'a function without a name'],
    ['an inner function', `describe('…', () => {\nfunction long() {\n${body}}\n});`, 'long'],
  ])('finds %s of 72 lines', (_, text, name) => {
    expect(longFunctionsIn({ path: 'a.ts', text })).toEqual([
      expect.stringMatching(`^a.ts:\\d ${name} has 72 lines$`),
    ]);
  });

  it('lets 70 lines pass, and a long chapter of short tests', () => {
    const just = `function just() {\n${'f();\n'.repeat(FUNCTION_LINES_MAX - 2)}}`;
    expect(longFunctionsIn({ path: 'a.ts', text: just })).toEqual([]);
    expect(longFunctionsIn({ path: 'a.ts', text: `describe('…', () => {\n${body}});` })).toEqual([]);
  });
});
