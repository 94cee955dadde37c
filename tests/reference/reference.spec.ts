import { readdirSync, readFileSync } from 'node:fs';
import { combinedPoints } from './combined-points.js';
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

/** Source: marks and points published beside the scoring tables (decathlon2000.com for men, BBC Sport for women). */
const BENCHMARKS: [string, string, string, number][] = [
  ['decathlon', '100m', '10.39', 1001],
  ['decathlon', '100m', '9.58', 1202],
  ['decathlon', 'long-jump', '7.76', 1000],
  ['decathlon', 'shot', '18.40', 1000],
  ['decathlon', 'high-jump', '1.65', 504],
  ['decathlon', 'high-jump', '2.11', 906],
  ['decathlon', '400m', '46.17', 1000],
  ['decathlon', '110mh', '13.80', 1000],
  ['decathlon', 'discus', '56.17', 1000],
  ['decathlon', 'pole-vault', '4.30', 702],
  ['decathlon', 'javelin', '77.19', 1000],
  ['decathlon', '1500m', '3:53.79', 1000],
  ['heptathlon', '100mh', '13.85', 1000],
  ['heptathlon', 'high-jump', '1.82', 1003],
  ['heptathlon', 'shot', '17.07', 1000],
  ['heptathlon', '200m', '23.80', 1000],
  ['heptathlon', 'long-jump', '6.48', 1001],
  ['heptathlon', 'javelin', '57.18', 1000],
  ['heptathlon', '800m', '2:07.63', 1000],
];

describe('the points of the second count', () => {
  it.each(BENCHMARKS)('%s, %s: %s is worth %d', (table, event, mark, points) => {
    expect(combinedPoints(table, event, mark, 'electronic')).toBe(points);
  });
});
