import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { recount } from '#rules';
import { type Expected } from '../reference/fault-shapes.js';
import { faulty, FAULT_NAMES, severalFaults } from '../reference/faults.js';
import { sheets } from '../reference/generate-sheet.js';
import { referenceResult } from '../reference/result.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

/**
 * The library against the second count: two implementations written apart, from the same words. The sheets are the
 * same in every run, so that a failure speaks of a change; another SECOND_COUNT_SEED draws others.
 */
const seed = Number(process.env['SECOND_COUNT_SEED'] ?? 20_000);

type Document = Record<string, unknown>;

/** Takes out what only the library can know, where it is there: its edition and its sentences. */
function withoutOwnWords(document: Document): Document {
  const { edition, ...rest } = document;
  const shared = typeof edition === 'string' || rest['rules'] === undefined ? rest : document;
  const differences = shared['differences'] as Document[] | undefined;
  if (!differences) return shared;
  const compared = differences.map((one) => {
    const { because, ...difference } = one;
    return typeof because === 'string' && because !== '' ? difference : one;
  });
  return { ...shared, differences: compared };
}

function comparable(result: unknown): unknown {
  const document = result as Document;
  if (document['format'] !== 'sectorline-meet-result/1') return withoutOwnWords(document);
  return { ...document, results: (document['results'] as Document[]).map(withoutOwnWords) };
}

describe('the second count', () => {
  it(`agrees on ${PROPERTY_RUNS} generated sheets`, () => {
    fc.assert(
      fc.property(sheets, (sheet) => {
        const source = JSON.stringify(sheet);
        const counted = comparable(recount(source));
        const second = referenceResult(JSON.parse(source));
        // The matcher shows what differs, but to look at every document with it takes most of the time.
        if (!isDeepStrictEqual(counted, second)) expect(counted).toEqual(second);
      }),
      { numRuns: PROPERTY_RUNS, seed },
    );
  }, 300_000);

  it('counts a sheet with a byte order mark, given as bytes, as it counts its text', () => {
    fc.assert(
      fc.property(sheets, (sheet) => {
        const text = JSON.stringify(sheet);
        expect(recount(new TextEncoder().encode(`\uFEFF${text}`))).toEqual(recount(text));
      }),
      { numRuns: 200, seed },
    );
  });
});

interface Problem {
  path: string;
  code: string;
  message: string;
  rule: string | null;
}

function isExpected(problem: Problem, expected: Expected): boolean {
  const { path, code } = problem;
  if (code !== expected.code) return false;
  return expected.below === true ? path.startsWith(expected.path) : path === expected.path;
}

describe('a faulty sheet', () => {
  it.each(FAULT_NAMES)('is not counted, and the problem is named: %s', (name) => {
    fc.assert(
      fc.property(faulty(name), ({ source, expected }) => {
        const result = recount(source) as unknown as Document;
        const problems = result['problems'] as Problem[];
        expect(result['results']).toBeUndefined();
        expect(problems.every(({ message }) => message.length > 0)).toBe(true);
        if (!problems.some((problem) => isExpected(problem, expected))) expect(problems).toEqual([expected]);
      }),
      { numRuns: name.startsWith('more than') ? 3 : 200, seed },
    );
  });
});

/** The JSON Pointers of a document from its beginning to its end. */
function pointersOf(value: unknown, path = ''): string[] {
  if (value === null || typeof value !== 'object') return [path];
  const within = Object.entries(value).flatMap(([key, one]) =>
    pointersOf(one, `${path}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`),
  );
  return [path, ...within];
}

describe('a sheet with several faults', () => {
  it('has its problems in document order, one for each place', () => {
    fc.assert(
      fc.property(severalFaults, (sheet) => {
        const { problems } = recount(JSON.stringify(sheet)) as unknown as { problems: Problem[] };
        const pointers = pointersOf(sheet);
        const places = problems.map((problem) => pointers.indexOf(problem.path));
        expect(places).not.toContain(-1);
        expect(places).toEqual([...new Set(places)].sort((a, b) => a - b));
      }),
      { numRuns: 1000, seed },
    );
  });
});
