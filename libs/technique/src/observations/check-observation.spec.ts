import { newVocabulary, type Vocabulary } from '../vocabulary/vocabulary.js';
import { observationProblems, rootsOf } from './check-observation.js';
import type { FaultMark, Observation, Scope } from './observation.js';

function mark(code: string, more: Partial<FaultMark> = {}): FaultMark {
  return { code, severity: 2, sure: true, causedBy: null, ...more };
}

function observation(scope: Scope, marks: readonly FaultMark[]): Observation {
  return {
    id: 'o1',
    throwId: 't1',
    observer: 'coach',
    observedAt: '2031-05-01T10:00:00Z',
    method: 'video',
    markKnown: false,
    view: 'rear',
    scope,
    marks,
    note: null,
  };
}

function looking(...codes: string[]): Scope {
  return { kind: 'codes', codes };
}

const THROWN = { event: 'discus', outcome: 'valid' } as const;
const WORDS: Vocabulary = { ...newVocabulary(), changes: [{ kind: 'retired', code: 'DT-02' }] };

describe('an observation', () => {
  it('may say present, absent and where it came from', () => {
    const fine = observation(looking('DT-04', 'DT-16', 'DT-20'), [
      mark('DT-04'),
      mark('DT-16', { causedBy: 'DT-04', severity: 3 }),
      mark('DT-20', { severity: 0 }),
    ]);
    expect(observationProblems(fine, THROWN, WORDS)).toEqual([]);
    expect(observationProblems(fine, { ...THROWN, outcome: 'foul' }, WORDS)).toEqual([]);
    expect(rootsOf(fine).map(({ code }) => code)).toEqual(['DT-04']);
  });

  it.each<[string, string, Observation]>([
    ['SCOPE_EMPTY', 'scope', observation(looking(), [])],
    ['CODE_UNKNOWN', 'scope.codes.1', observation(looking('DT-04', 'DT-99'), [])],
    ['CODE_OF_OTHER_EVENT', 'scope.codes.0', observation(looking('SP-01'), [])],
    ['CODE_RETIRED', 'scope.codes.0', observation(looking('DT-02'), [])],
    ['NOTED_TWICE', 'marks.1.code', observation(looking('DT-04'), [mark('DT-04'), mark('DT-04')])],
    ['NOT_IN_SCOPE', 'marks.0.code', observation(looking('DT-04'), [mark('DT-06')])],
    [
      'SEVERITY_OUT_OF_RANGE',
      'marks.0.severity',
      observation(looking('DT-04'), [mark('DT-04', { severity: 4 as 3 })]),
    ],
    ['OPPOSITES', 'marks.1.code', observation(looking('DT-29', 'DT-30'), [mark('DT-29'), mark('DT-30')])],
    [
      'CAUSE_NOT_PRESENT',
      'marks.0.causedBy',
      observation(looking('DT-16'), [mark('DT-16', { causedBy: 'DT-04' })]),
    ],
    [
      'CAUSE_LATER',
      'marks.1.causedBy',
      observation(looking('DT-16', 'DT-04'), [mark('DT-16'), mark('DT-04', { causedBy: 'DT-16' })]),
    ],
    [
      'CAUSES_IN_A_CIRCLE',
      'marks.0.causedBy',
      observation(looking('DT-04', 'DT-05'), [
        mark('DT-04', { causedBy: 'DT-05' }),
        mark('DT-05', { causedBy: 'DT-04' }),
      ]),
    ],
  ])('is told %s at %s', (code, path, wrong) => {
    expect(observationProblems(wrong, THROWN, WORDS)).toContainEqual({
      code,
      path,
      sentence: expect.any(String),
    });
  });

  it('has nothing to look at after a pass', () => {
    const problems = observationProblems(
      observation(looking('DT-04'), []),
      { ...THROWN, outcome: 'pass' },
      WORDS,
    );
    expect(problems.map(({ code }) => code)).toEqual(['NOTHING_THROWN']);
  });

  it('without a scope may name anything', () => {
    expect(observationProblems(observation({ kind: 'noticed' }, [mark('DT-06')]), THROWN, WORDS)).toEqual([]);
  });

  it('may deny both opposites', () => {
    const neither = observation(looking('DT-29', 'DT-30'), [mark('DT-29', { severity: 0 }), mark('DT-30')]);
    expect(observationProblems(neither, THROWN, WORDS)).toEqual([]);
  });
});
