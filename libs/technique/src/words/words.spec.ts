import { REFUSAL_CODES, refused, seriesMissing, throwsMissing } from '../answer.js';
import type { FaultEffect } from '../faults/fault-effect.js';
import { STAGES, stageWords } from '../vocabulary/stage.js';
import { effectSentence, foulSentence, prevalenceSentence } from './answer-sentence.js';
import { refusalSentence } from './refusal-sentence.js';
import { severityWords } from './severity.js';
import { sidedText, sideNeutral } from './sides.js';

describe('sides', () => {
  const stored = '{block} foot late, {throw} arm long, {block} side open';

  it('are put in by the hand', () => {
    expect(sidedText(stored, 'right')).toBe('Left foot late, right arm long, left side open');
    expect(sidedText(stored, 'left')).toBe('Right foot late, left arm long, right side open');
  });

  it('are those of the arms when the hand is not known', () => {
    expect(sidedText(stored, null)).toBe('Free-arm-side foot late, throwing arm long, free-arm side open');
  });

  it('are taken out of what a coach typed, and back', () => {
    expect(sideNeutral('Left foot late, right at the end', 'right')).toBe(
      '{block} foot late, right at the end',
    );
    expect(sideNeutral('left foot late', 'left')).toBe('{throw} foot late');
    expect(sidedText(sideNeutral('left-side stop', 'right'), 'left')).toBe('Right-side stop');
  });
});

const EFFECT: FaultEffect = {
  percent: -2.04,
  interval: { low: -4.5, high: 0.71, level: 0.9 },
  p: 0.2,
  beta: -0.0206,
  standardError: 0.016,
  exact: true,
  draws: 0,
  arrangements: 10_800,
  informativeSeries: 6,
  series: 12,
  throwsWith: 12,
  throwsWithout: 16,
  resampled: null,
  notYetKnown: true,
};
const SHARE = { k: 14, n: 36, clusters: 6, icc: null, designEffect: 1, share: 14 / 36, notAssessed: 0 };
const LINK = {
  oddsRatio: 2.7,
  interval: null,
  chiSquare: 3.4,
  p: 0.064,
  chiSquareCorrected: 2.5,
  pCorrected: 0.11,
  riskDifference: 0.2345,
  riskDifferenceError: 0.1,
  exact: null,
  sparse: false,
  decidingP: 0.064,
  throwsWith: 19,
  throwsWithout: 50,
};

describe('sentences', () => {
  it('give the size, how sure, from how much, and no more than that', () => {
    expect(effectSentence(EFFECT)).toBe(
      'In the same series, throws with this point were associated with marks about 2.0 % shorter ' +
        '(90 % interval −4.5 % to +0.7 %; 6 series, 12 throws with it and 16 without): not yet known: it could be nothing.',
    );
    expect(effectSentence({ ...EFFECT, notYetKnown: false, exact: false, draws: 2000 })).toMatch(
      /worth testing in practice\. A first answer; a more exact one follows\.$/,
    );
    expect(
      effectSentence({ ...EFFECT, interval: { ...EFFECT.interval, low: Number.NEGATIVE_INFINITY } }),
    ).toMatch(/any loss to/);
    expect(foulSentence(LINK)).toMatch(
      /^Throws with this point were associated with 23 more fouls in a hundred/,
    );
    expect(prevalenceSentence({ ...SHARE, interval: { low: 0.25, high: 0.55, level: 0.95 } })).toBe(
      'Seen in 14 of 36 throws that were looked at for it (95 % interval 25–55 %).',
    );
    expect(prevalenceSentence({ ...SHARE, interval: null })).toMatch(/, all in one series\.$/);
  });

  it('of a refusal say what is missing', () => {
    expect(refusalSentence(seriesMissing('LT_INFORMATIVE_SERIES', 1, 3, 5.5))).toBe(
      'Too few series have throws with this point and throws without it. There are 1; 3 are needed. ' +
        'About 11 more throws are missing.',
    );
    expect(refusalSentence(throwsMissing('LT_PER_STATE', 4, 5))).toMatch(
      /About one more throw is missing\.$/,
    );
    expect(refusalSentence(throwsMissing('SCOPE_COVERAGE', 14, 18))).toMatch(
      /4 more throws are to be looked at\.$/,
    );
    expect(refusalSentence(refused('STAGE_NOT_REACHED', 'stages', 0, 2))).toBe(
      'This point is not taught yet.',
    );
  });

  it('claim no cause anywhere', () => {
    const all = [
      ...REFUSAL_CODES.map((code) => refusalSentence(refused(code, 'throws', 1, 3, 2))),
      effectSentence(EFFECT),
      effectSentence({ ...EFFECT, percent: 3, notYetKnown: false }),
      foulSentence(LINK),
      foulSentence({ ...LINK, riskDifference: -0.1, decidingP: 0.01 }),
      prevalenceSentence({ ...SHARE, interval: null }),
    ];
    const causal =
      /\b(cause[sd]?|because|costs?|leads? to|results? in|due to|prove[nsd]?|makes? (you|the throw)|will)\b/i;
    expect(all.filter((sentence) => causal.test(sentence))).toEqual([]);
  });

  it('are there for every stage and severity', () => {
    expect(STAGES.map(stageWords)).toContain('Still learning the whole throw');
    expect(([0, 1, 2, 3] as const).map((severity) => severityWords(severity).name)).toEqual([
      'not there',
      'slight',
      'clear',
      'breaks the throw',
    ]);
  });
});
