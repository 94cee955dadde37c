import fc from 'fast-check';
import { implementFor, type Implement } from './implement-for.js';
import { findingSentence, inspect, measuredProblems, type Measured } from './inspection.js';
import {
  implementStatus,
  inForce,
  recheckOf,
  standingOf,
  statusOf,
  type InspectionEntry,
  type Look,
} from './inspection-log.js';

const DISCUS = implementFor('WA', 'discus', 'M', 'senior', '2026-06-13')!;
const HAMMER = implementFor('WA', 'hammer', 'W', 'senior', '2026-06-13')!;
const SCHOOL_DISCUS = implementFor('NFHS', 'discus', 'M', 'high-school', '2026-06-13')!;

function found(implement: Implement, grams: number | null, mm: Measured['mm'] = {}): string[] {
  const { outcome, findings } = inspect({ grams, mm }, implement);
  return [outcome, ...findings.map(({ what, verdict }) => `${what} ${verdict}`)];
}

// The limits were read in the requirements of a masters championship (Perth 2016): 2 kg, 219 to 221 mm, plate 50 to 57 mm.
describe('the inspection of an implement', () => {
  it.each([
    [
      2000,
      { diameter: 219, 'centre plate': 50 },
      ['passed', 'mass passes', 'diameter passes', 'centre plate passes'],
    ],
    [
      2005,
      { diameter: 221, 'centre plate': 57 },
      ['passed', 'mass passes', 'diameter passes', 'centre plate passes'],
    ],
    // Heavier than makers supply them is no fault.
    [2100, { diameter: 220 }, ['passed', 'mass passes', 'diameter passes', 'centre plate not measured']],
    [1999, { diameter: 220 }, ['failed', 'mass too small', 'diameter passes', 'centre plate not measured']],
    [2000, { diameter: 222 }, ['failed', 'mass passes', 'diameter too large', 'centre plate not measured']],
    [
      2000,
      { diameter: 218, 'centre plate': 58 },
      ['failed', 'mass passes', 'diameter too small', 'centre plate too large'],
    ],
    [
      null,
      { diameter: 220 },
      ['incomplete', 'mass not measured', 'diameter passes', 'centre plate not measured'],
    ],
    [
      null,
      { diameter: 230 },
      ['failed', 'mass not measured', 'diameter too large', 'centre plate not measured'],
    ],
  ])('of %s g, %j', (grams, mm, expected) => {
    expect(found(DISCUS, grams, mm)).toEqual(expected);
  });

  it('has a greatest length of a hammer and no least', () => {
    expect(found(HAMMER, 4000, { head: 95, length: 900 })).toEqual([
      'passed',
      'mass passes',
      'head passes',
      'length passes',
    ]);
    expect(found(HAMMER, 4000, { head: 95, length: 1196 })[0]).toBe('failed');
  });

  it('is of the mass alone where no dimensions are known', () => {
    expect(found(SCHOOL_DISCUS, 1600)).toEqual(['passed', 'mass passes']);
  });

  it('says the reason and the rule', () => {
    const { findings } = inspect({ grams: 1998, mm: { diameter: 222 } }, DISCUS);
    expect(findings.map(findingSentence)).toEqual([
      'mass 1998 g, at least 2000 g (WA TR32, table of implements)',
      'diameter 222 mm, 219 to 221 mm (WA TR34)',
      'centre plate not measured, 50 to 57 mm (WA TR34)',
    ]);
    const [, , length] = inspect({ grams: 4000, mm: { length: 1300 } }, HAMMER).findings;
    expect(findingSentence(length!)).toBe('length 1300 mm, at most 1195 mm (WA TR36)');
  });

  it('does not take a reading that no scale shows', () => {
    expect(measuredProblems({ grams: 2000, mm: { diameter: 220 } })).toEqual([]);
    expect(
      measuredProblems({ grams: 0, mm: { diameter: 220.5, head: -1 } }).map(({ field }) => field),
    ).toEqual(['grams', 'diameter', 'head']);
  });

  it('passes all that is at least as heavy and within the limits, and nothing else', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1990, max: 2010 }),
        fc.integer({ min: 215, max: 225 }),
        (grams, diameter) => {
          const isRight = grams >= 2000 && diameter >= 219 && diameter <= 221;
          return (inspect({ grams, mm: { diameter } }, DISCUS).outcome === 'passed') === isRight;
        },
      ),
      { numRuns: 20_000 },
    );
  });
});

describe('the log of inspections', () => {
  const log: InspectionEntry[] = [
    { implement: 'D1', outcome: 'failed', attempt: null },
    { implement: 'D1', outcome: 'passed', attempt: null },
    { implement: 'D2', outcome: 'passed', attempt: null },
    { implement: 'D2', outcome: 'passed', attempt: 'a7' },
  ];

  it('knows how an implement was last found', () => {
    expect(['D1', 'D2', 'D3'].map((implement) => implementStatus(log, implement))).toEqual([
      'passed',
      'passed',
      null,
    ]);
  });

  it('knows whether the implement of a record was looked at again', () => {
    expect(recheckOf(log, 'a7', 'D2')).toBe('passed');
    expect(recheckOf(log, 'a8', 'D2')).toBe('missing');
    expect(recheckOf(log, 'a7', 'D1')).toBe('other implement');
    expect(recheckOf([...log, { implement: 'D2', outcome: 'failed', attempt: 'a7' }], 'a7', 'D2')).toBe(
      'failed',
    );
  });

  const look = (id: string, changes: Partial<Look> = {}): Look => ({
    ...{ id, replacesId: null, kind: 'inspection', outcome: 'passed', keptBack: false },
    ...changes,
  });
  const again = { kind: 'recheck' } as const;

  it.each<[string, Look[]]>([
    ['not inspected', []],
    ['passed', [look('1')]],
    ['failed', [look('1'), look('2', { outcome: 'failed' })]],
    ['passed', [look('1', { outcome: 'failed' }), look('2', { replacesId: '1' })]],
    ['incomplete', [look('1', { outcome: 'incomplete' })]],
    ['rechecked', [look('1'), look('2', again)]],
    ['failed', [look('1'), look('2', { ...again, outcome: 'failed' })]],
    ['kept back', [look('1'), look('2', { ...again, outcome: 'incomplete', keptBack: true })]],
    ['kept back', [look('1', { outcome: 'failed', keptBack: true })]],
    // What corrects an earlier look does not come after a later one.
    ['failed', [look('1'), look('2', { outcome: 'failed' }), look('3', { replacesId: '1' })]],
    [
      'rechecked',
      [look('1'), look('2', { ...again, outcome: 'failed' }), look('3', { ...again, replacesId: '2' })],
    ],
  ])('says %s', (status, looks) => {
    expect(statusOf(looks)).toBe(status);
  });

  it('takes a correction of a correction for the first', () => {
    const looks = [look('1'), look('2', { replacesId: '1' }), look('3'), look('4', { replacesId: '2' })];
    expect(inForce(looks).map(({ id }) => id)).toEqual(['4', '3']);
  });

  it('lets what passed again be used', () => {
    expect((['rechecked', 'passed', 'kept back'] as const).map(standingOf)).toEqual([
      'passed',
      'passed',
      'kept back',
    ]);
  });
});
