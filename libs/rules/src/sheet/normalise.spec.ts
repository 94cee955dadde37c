import { editionsOf } from '../rule-sets/index.js';
import type { PlainJson } from './json.js';
import { normaliseSheet, sameJson } from './normalise.js';

function normal(sheet: unknown): unknown {
  return JSON.parse(JSON.stringify(normaliseSheet(sheet as PlainJson)));
}

const discus = { format: 'sectorline-sheet/1', rules: 'WA', event: 'discus' };

describe('the normal form of a sheet', () => {
  it('leaves out what goes without saying', () => {
    const sheet = {
      ...discus,
      edition: editionsOf('WA').at(-1)!,
      category: {},
      indoor: false,
      stage: 'final',
      plan: {
        rounds: 6,
        cuts: [{ through: 8, after: 3 }],
        cutTies: 'next-best',
        reorderAfter: [3],
        reorder: 'reverse',
      },
      competitors: [
        { bib: '1', club: '', guest: false, series: ['X', null, null] },
        { bib: '2', series: [null] },
        { bib: '3', series: [] },
      ],
      admitted: [],
      scoring: { places: [1], scorersPerClub: null, nonScorers: 'out' },
    };
    const competitors = [{ bib: '1', series: ['X'] }, { bib: '2' }, { bib: '3' }];
    expect(normal(sheet)).toEqual({ ...discus, competitors, scoring: { places: [1] } });
  });

  it('keeps what does not', () => {
    const sheet = {
      ...discus,
      edition: '1912',
      category: { sex: 'W' },
      indoor: true,
      stage: 'qualification',
      qualifying: { standard: '50.00', fill: 12 },
      plan: { cuts: [{ after: 2, through: 8 }] },
      competitors: [
        { bib: '1', name: '', club: 'A', flight: '', guest: true, series: [null, 'X'], written: {} },
      ],
      admitted: [{ bib: '1', by: 'R' }],
      scoring: { places: [], scorersPerClub: 2, nonScorers: 'hold' },
    };
    expect(normal(sheet)).toEqual(sheet);
  });

  it('compares a plan with the rule set for as many rounds, and for the stage', () => {
    const competitors: unknown[] = [];
    const withPlan = (plan: unknown, changes: Record<string, unknown> = {}): unknown =>
      normal({ ...discus, ...changes, plan, competitors });
    expect(withPlan({ rounds: 3, cuts: [], reorderAfter: [] })).toEqual({
      ...discus,
      plan: { rounds: 3 },
      competitors,
    });
    expect(withPlan({ rounds: 3 }, { stage: 'qualification' })).toEqual({
      ...discus,
      stage: 'qualification',
      competitors,
    });
    expect(withPlan({ cuts: [] })).toEqual({ ...discus, plan: { cuts: [] }, competitors });
  });

  it('writes a wind, and a time by hand, in one way', () => {
    const jump = {
      ...discus,
      event: 'long-jump',
      competitors: [{ bib: '1', series: ['7.00 +01.0', '6.90 -1.0', 'X'] }],
    };
    expect(normal(jump)).toEqual({
      ...jump,
      competitors: [{ bib: '1', series: ['7.00 +1.0', '6.90 -1.0', 'X'] }],
    });
    const marks = { '60mh': '8.50', shot: '12.50', '800m': null };
    const combined = {
      format: 'sectorline-combined/1',
      table: 'pentathlon-indoor',
      rows: [{ bib: '1', club: '', marks }],
    };
    expect(normal({ ...combined, timing: 'electronic' })).toEqual({
      ...combined,
      rows: [{ bib: '1', marks }],
    });
    expect(normal({ ...combined, timing: 'hand' })).toEqual({
      ...combined,
      timing: 'hand',
      rows: [{ bib: '1', marks: { ...marks, '60mh': '8.5' } }],
    });
  });

  it('goes through the sheets of a meet', () => {
    const scoring = { places: [1] };
    const meet = {
      format: 'sectorline-meet/1',
      scoring: { ...scoring, nonScorers: 'out' },
      sheets: [{ ...discus, indoor: false }, 7],
    };
    expect(normal(meet)).toEqual({ format: 'sectorline-meet/1', scoring, sheets: [discus, 7] });
  });

  it.each([
    [null],
    [7],
    ['x'],
    [[]],
    [{}],
    [{ format: 'other', indoor: false }],
    [{ ...discus, rules: 'XY', plan: 3 }],
  ])('leaves %j alone', (sheet) => {
    expect(normal(sheet)).toEqual(sheet);
  });
});

describe('two JSON values', () => {
  it('are the same whatever the order of their keys', () => {
    expect(sameJson({ a: [1, { b: null }], c: 'x' }, { c: 'x', a: [1, { b: null }] })).toBe(true);
    const pairs: [PlainJson, PlainJson][] = [
      [
        [1, 2],
        [2, 1],
      ],
      [[1], [1, 2]],
      [{ a: 1 }, { a: 1, b: 1 }],
      [{ a: 1 }, { b: 1 }],
      [{}, []],
      [[], null],
      [null, {}],
      ['1', 1],
      [{ toString: 1 }, {}],
      [{}, { toString: 1 }],
    ];
    for (const [a, b] of pairs) expect(sameJson(a, b)).toBe(false);
  });
});
