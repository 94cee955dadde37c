import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { recount } from '#rules';

/** One case of the sheet format; see tests/cases/README.md. */
interface Case {
  readonly title: string;
  readonly source: string;
  readonly sheet: unknown;
  readonly expect: unknown;
}

/** Cases kept elsewhere are counted as well when this names their folder. */
const folders = ['tests/cases', ...(process.env['SHEET_CASES_DIR'] ? [process.env['SHEET_CASES_DIR']] : [])];

const cases = folders.flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map(
      (name) => [join(folder, name), JSON.parse(readFileSync(join(folder, name), 'utf8')) as Case] as const,
    ),
);

/** What of `expected` is to be found: objects in part, lists whole and in order. */
function partOf(actual: unknown, expected: unknown): unknown {
  if (Array.isArray(expected)) {
    if (!Array.isArray(actual)) return actual;
    return actual.map((item, index) => partOf(item, expected[index]));
  }
  if (typeof expected !== 'object' || expected === null) return actual;
  if (typeof actual !== 'object' || actual === null || Array.isArray(actual)) return actual;
  const wanted = Object.keys(expected).filter((key) => key in actual);
  return Object.fromEntries(
    wanted.map((key) => [
      key,
      partOf((actual as Record<string, unknown>)[key], (expected as Record<string, unknown>)[key]),
    ]),
  );
}

describe('the cases of the sheet format', () => {
  it('are all there', () => {
    expect(cases.length).toBeGreaterThanOrEqual(72);
  });

  it.each(cases)('%s', (_name, { sheet, expect: expected }) => {
    const document: unknown = JSON.parse(JSON.stringify(recount(JSON.stringify(sheet))));
    expect(partOf(document, expected)).toEqual(expected);
  });
});
