import { faultEffect } from '../faults/fault-effect.js';
import { prevalence } from '../faults/prevalence.js';
import { chanceOf } from '../numbers/random.js';
import { newVocabulary, type Vocabulary } from '../vocabulary/vocabulary.js';
import { assessedThrows } from './assess-series.js';
import { doubleNotes } from './double-notes.js';
import { answerOf, type Observation, type Scope } from './observation.js';
import type { Thrown } from './thrown.js';

const VOCABULARY = newVocabulary();

function thrown(id: string, more: Partial<Thrown> = {}): Thrown {
  return {
    id,
    athlete: 'ada',
    thrownIn: 'competition',
    occasion: 'c1',
    day: 3,
    event: 'discus',
    variant: 'full-turn',
    massG: 1000,
    round: 1,
    outcome: 'valid',
    markCm: 3000,
    measured: true,
    effortPercent: null,
    voidedOnPurpose: false,
    annulled: false,
    styles: ['reverse'],
    ...more,
  };
}

const LOOKED: Scope = { kind: 'checklist', name: 'today', version: 1, codes: ['DT-04', 'DT-14'] };

function observed(throwId: string, severity: 0 | 1 | 2 | 3, more: Partial<Observation> = {}): Observation {
  return {
    id: `o-${throwId}`,
    throwId,
    observer: 'one',
    observedAt: '2031-05-01T10:00:00Z',
    method: 'video',
    markKnown: false,
    view: null,
    scope: LOOKED,
    marks: severity === 0 ? [] : [{ code: 'DT-04', severity, sure: true, causedBy: null }],
    note: null,
    ...more,
  };
}

describe('the answer of an observation', () => {
  it('is present, absent or not assessed', () => {
    expect(answerOf(observed('t', 3), 'DT-04', VOCABULARY)).toEqual({
      state: 'present',
      severity: 3,
      sure: true,
    });
    expect(answerOf(observed('t', 3), 'DT-14', VOCABULARY)).toEqual({ state: 'absent' });
    expect(answerOf(observed('t', 3), 'DT-20', VOCABULARY)).toEqual({ state: 'not-assessed' });
    const noticed = observed('t', 0, { scope: { kind: 'noticed' } });
    expect(answerOf(noticed, 'DT-04', VOCABULARY)).toEqual({ state: 'not-assessed' });
  });

  it('counts what was noted under a code that was merged later', () => {
    const merged: Vocabulary = {
      ...VOCABULARY,
      changes: [{ kind: 'merged', code: 'DT-X01', into: 'DT-04' }],
    };
    const old = observed('t', 0, {
      scope: { kind: 'codes', codes: ['DT-X01'] },
      marks: [{ code: 'DT-X01', severity: 2, sure: false, causedBy: null }],
    });
    expect(answerOf(old, 'DT-04', merged)).toEqual({ state: 'present', severity: 2, sure: false });
  });
});

describe('throws with their notes', () => {
  it('keep to the same occasion, implement, variant and intended effort', () => {
    const practice = { thrownIn: 'practice', occasion: 'p1' } as const;
    const throws = [
      thrown('a', { round: 2 }),
      thrown('b'),
      thrown('c', { ...practice, effortPercent: 80 }),
      thrown('d', { ...practice, effortPercent: 95 }),
      thrown('e', { ...practice, effortPercent: 95, variant: 'standing' }),
      thrown('f', { ...practice, effortPercent: 95, massG: 1250 }),
    ];
    const { series, leftOut } = assessedThrows(
      { throws, observations: [observed('a', 2)], vocabulary: VOCABULARY },
      'DT-04',
      'distance',
    );
    expect(series.map(({ trials }) => trials.length)).toEqual([2, 1, 1, 1, 1]);
    expect(series[0]?.trials.map(({ round, severity }) => [round, severity])).toEqual([
      [1, null],
      [2, 2],
    ]);
    expect(leftOut).toEqual([]);
  });

  it('are left out for a reason that depends on the question', () => {
    const practice = { thrownIn: 'practice', occasion: 'p1' } as const;
    const throws = [
      thrown('pass', { outcome: 'pass', markCm: null }),
      thrown('struck', { annulled: true }),
      thrown('voided', { outcome: 'foul', markCm: null, voidedOnPurpose: true }),
      thrown('easy', practice),
      thrown('paced', { ...practice, effortPercent: 90, measured: false }),
      thrown('foul', { outcome: 'foul', markCm: null }),
    ];
    const of = (purpose: 'distance' | 'fouls' | 'prevalence') =>
      assessedThrows({ throws, observations: [], vocabulary: VOCABULARY }, 'DT-04', purpose).leftOut.map(
        ({ throwId, reason }) => `${throwId}: ${reason}`,
      );
    const always = ['pass: PASS', 'struck: ANNULLED', 'voided: VOIDED_ON_PURPOSE'];
    expect(of('distance')).toEqual([...always, 'easy: EFFORT_NOT_SAID', 'paced: NOT_MEASURED']);
    expect(of('fouls')).toEqual(of('distance'));
    expect(of('prevalence')).toEqual(always);
  });

  it('take the observation made before the mark was known, then the video, then the earliest', () => {
    const known = observed('a', 3, { markKnown: true });
    const live = observed('a', 2, { method: 'live' });
    const video = observed('a', 1, { observedAt: '2031-05-03T10:00:00Z' });
    const severity = (...observations: Observation[]) =>
      assessedThrows({ throws: [thrown('a')], observations, vocabulary: VOCABULARY }, 'DT-04', 'distance')
        .series[0]?.trials[0]?.severity;
    expect([severity(known, live, video), severity(known, live), severity(known)]).toEqual([1, 2, 3]);
  });

  it('noted only where something was noticed say nothing, and it is said so', () => {
    const throws = Array.from({ length: 6 }, (_, at) =>
      thrown(`t${at}`, { round: at + 1, markCm: 3000 + at }),
    );
    const observations = throws.slice(0, 3).map(({ id }) => observed(id, 2, { scope: { kind: 'noticed' } }));
    const { series } = assessedThrows({ throws, observations, vocabulary: VOCABULARY }, 'DT-04', 'distance');
    const refusal = { kind: 'refused', code: 'NOTICED_ONLY', have: 3 };
    expect(faultEffect(series, { chance: chanceOf(1) })).toMatchObject(refusal);
    expect(prevalence(series)).toMatchObject(refusal);
  });
});

describe('double notes', () => {
  it('are of throws that both looked at, the latest look of each', () => {
    const observations = [
      observed('a', 2),
      observed('a', 0, { observer: 'two' }),
      observed('a', 3, { observer: 'two', observedAt: '2031-05-02T10:00:00Z' }),
      observed('b', 2),
      observed('c', 1, { observer: 'two' }),
      observed('c', 1, { scope: { kind: 'codes', codes: ['DT-20'] }, marks: [] }),
      observed('d', 2),
      observed('d', 2, { observer: 'two', scope: { kind: 'noticed' } }),
    ];
    expect(doubleNotes(observations, ['one', 'two'], 'DT-04', VOCABULARY)).toEqual([{ first: 2, second: 3 }]);
  });
});
