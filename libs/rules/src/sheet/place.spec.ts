import { Findings } from './findings.js';
import { comparePlaces, DOCUMENT, itemOf, pointerOf, type Place } from './place.js';
import { PROBLEM_CODES } from './problem-codes.js';

function keyOf(parent: Place, step: string, index: number): Place {
  return { parent, step, index };
}

const competitors = keyOf(DOCUMENT, 'competitors', 2);

describe('a place', () => {
  it('is a JSON Pointer', () => {
    expect(pointerOf(DOCUMENT)).toBe('');
    expect(pointerOf(keyOf(itemOf(competitors, 3), 'bib', 0))).toBe('/competitors/3/bib');
  });

  // RFC 6901, section 5: the keys "a/b", "m~n" and "".
  it.each([
    ['a/b', '/a~1b'],
    ['m~n', '/m~0n'],
    ['~1', '/~01'],
    ['', '/'],
  ])('escapes the key %j', (key, pointer) => {
    expect(pointerOf(keyOf(DOCUMENT, key, 0))).toBe(pointer);
  });

  it('comes before all that is in it, and after all that stands before it', () => {
    const [first, tenth] = [itemOf(competitors, 1), itemOf(competitors, 9)];
    const order = [DOCUMENT, competitors, first, keyOf(first, 'bib', 0), keyOf(first, 'name', 1), tenth];
    for (const [at, place] of order.entries()) {
      for (const [other, otherPlace] of order.entries()) {
        expect(Math.sign(comparePlaces(place, otherPlace))).toBe(Math.sign(at - other));
      }
    }
  });
});

describe('findings', () => {
  it('keep one problem for each place: the one that comes first in the list of codes, however they come in', () => {
    for (const codes of [PROBLEM_CODES, [...PROBLEM_CODES].reverse()]) {
      const findings = new Findings();
      for (const code of codes) findings.report(competitors, code, code);
      expect(findings.problems()).toEqual([
        { path: '/competitors', code: 'UNREADABLE', message: 'UNREADABLE', rule: null },
      ]);
    }
  });

  it('come out in document order', () => {
    const findings = new Findings();
    for (const index of [10, 9, 0]) findings.report(itemOf(competitors, index), 'CELL', 'x', 'a rule');
    findings.report(DOCUMENT, 'MISSING', 'x');
    expect(findings.problems().map(({ path }) => path)).toEqual([
      '',
      '/competitors/0',
      '/competitors/9',
      '/competitors/10',
    ]);
    expect(findings.hasAt(itemOf(competitors, 9))).toBe(true);
    expect(findings.hasAt(competitors)).toBe(false);
  });
});
