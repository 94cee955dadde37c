import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One case of the sheet format; see README.md beside. */
export interface Case {
  readonly title: string;
  readonly source: string;
  readonly sheet: any;
  readonly expect: any;
}

/** Cases kept elsewhere are counted as well when this names their folder. */
const folders = ['tests/cases', ...(process.env['SHEET_CASES_DIR'] ? [process.env['SHEET_CASES_DIR']] : [])];

/** Every case with its path. */
export function readCases(): (readonly [string, Case])[] {
  return folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.json'))
      .map(
        (name) => [join(folder, name), JSON.parse(readFileSync(join(folder, name), 'utf8')) as Case] as const,
      ),
  );
}

/** What of `expected` is to be found in `actual`: objects in part, lists whole and in order. */
export function partOf(actual: unknown, expected: unknown): unknown {
  if (Array.isArray(expected)) {
    return Array.isArray(actual) ? actual.map((item, index) => partOf(item, expected[index])) : actual;
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
