import { readdirSync, readFileSync } from 'node:fs';
import { referenceResult } from './result.js';

/**
 * The second count against the cases of the format: published championship results, worked examples of the rule
 * books and sheets counted by others. Each case names its source. Cases of invalid sheets are not for it: it counts
 * valid sheets only.
 */
interface Case {
  title: string;
  source: string;
  sheet: unknown;
  expect: Record<string, unknown>;
}

const folder = new URL('../cases/', import.meta.url);
const cases = readdirSync(folder)
  .filter((name) => name.endsWith('.json') && !name.startsWith('invalid-'))
  .map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Case);

/** The part of `actual` that `expected` speaks of: objects in part, lists whole. */
function partFor(expected: unknown, actual: unknown): unknown {
  if (Array.isArray(expected) && Array.isArray(actual)) {
    return actual.map((one: unknown, at) => (at < expected.length ? partFor(expected[at], one) : one));
  }
  if (expected === null || actual === null || typeof expected !== 'object' || typeof actual !== 'object')
    return actual;
  const keys = Object.keys(expected).filter((key) => Object.hasOwn(actual, key));
  return Object.fromEntries(
    keys.map((key) => [key, partFor((expected as Case['expect'])[key], (actual as Case['expect'])[key])]),
  );
}

describe('the second count', () => {
  it('has cases to check', () => {
    expect(cases.length).toBeGreaterThan(50);
  });

  it.each(cases.map((one): [string, Case] => [`${one.title} (${one.source.slice(0, 60)})`, one]))(
    'agrees: %s',
    (_, one) => {
      expect(partFor(one.expect, referenceResult(one.sheet))).toEqual(one.expect);
    },
  );
});
