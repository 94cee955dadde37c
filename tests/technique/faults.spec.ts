import {
  acrossDays,
  chanceOf,
  effectLines,
  falseDiscoveryRates,
  faultEffect,
  foulLink,
  movingTogether,
  nextToWorkOn,
  oneFocus,
  poolEffects,
  prevalence,
  screened,
  seedOf,
  type AssessedSeries,
  type AssessedTrial,
  type Candidate,
  type EffectOptions,
  type Severity,
} from '#technique';
import { mantelHaenszel, type FoulTable } from '../../libs/technique/src/faults/mantel-haenszel.js';
import {
  derSimonianLaird,
  pauleMandel,
  restrictedLikelihoodVariance,
  weightedMean,
} from '../../libs/technique/src/faults/pooling.js';
import { phiWithin } from '../../libs/technique/src/faults/many-faults.js';
import { CARD_ROWS } from './four-athletes.js';
import { grouped } from '../../libs/technique/src/numbers/moments.js';

// Where nothing else is named: computed with Python 3.11/scipy 1.17 or R 4.2.2 (mantelhaen.test, metafor's formulas).

/** `3140*` a mark with the fault, `X` a foul, `-` after it: not looked at. */
function series(id: string, card: string, more: Partial<AssessedTrial> = {}): AssessedSeries {
  const trials = card.split(' ').map((cell, at): AssessedTrial => {
    const mark = cell.replace(/[*-]/, '');
    const noted: Severity | null = cell.endsWith('*') ? 2 : cell.endsWith('-') ? null : 0;
    return { round: at + 1, markCm: mark === 'X' ? null : Number(mark), severity: noted, ...more };
  });
  return { id, day: 0, implement: 'discus-1000', trials };
}

const FOUR = [...grouped(CARD_ROWS, (row) => row.competition).values()].map((rows) => ({
  id: rows[0]?.competition ?? '',
  athlete: rows[0]?.athlete ?? '',
  day: 0,
  implement: 'discus-1000',
  trials: rows.map(
    ({ round, markCm, noted }): AssessedTrial => ({ round, markCm, severity: noted === 1 ? 2 : 0 }),
  ),
}));

function options(more: Partial<EffectOptions> = {}): EffectOptions {
  return { chance: chanceOf(seedOf('test')), ...more };
}

describe('the effect of a fault', () => {
  it('of four athletes: about −2 %, could be nothing, six usable series', () => {
    const found = faultEffect(FOUR, options());
    expect(found).toMatchObject({
      kind: 'answer',
      informativeSeries: 6,
      series: 12,
      exact: true,
      arrangements: 10_800,
      notYetKnown: true,
      percent: expect.closeTo(-1.965, 3),
      p: expect.closeTo(0.32037037, 8),
      beta: expect.closeTo(-0.019845424, 9),
      standardError: expect.closeTo(0.016294943, 8),
    });
  });

  it('counts a slight fault only when asked to', () => {
    const slight = FOUR.map((one) => ({
      ...one,
      trials: one.trials.map(
        (trial): AssessedTrial => ({ ...trial, severity: trial.severity === 2 ? 1 : 0 }),
      ),
    }));
    expect(faultEffect(slight, options())).toMatchObject({ code: 'LT_INFORMATIVE_SERIES', have: 0 });
    expect(faultEffect(slight, options({ presentFrom: 1 }))).toMatchObject({
      p: expect.closeTo(0.32037037, 8),
    });
  });

  it('per step of severity is the same slope over the steps', () => {
    // Every present one is a 2, so a step is half of the difference.
    const dose = faultEffect(FOUR, options({ asDose: true }));
    expect(dose).toMatchObject({
      beta: expect.closeTo(-0.019845424 / 2, 9),
      p: expect.closeTo(0.32037037, 8),
    });
  });

  it('by a mixed model is split into within a series and between days', () => {
    const found = acrossDays(FOUR);
    // The within part of a split model is the within-series slope itself.
    expect(found?.within.beta).toBeCloseTo(-0.019845424, 3);
    expect(found?.between.beta).toBeLessThan(found?.within.beta ?? 0);
  });
});

describe('a refusal of an effect', () => {
  const good = [
    '3000* 3100 3050* 3120 3110* 3130',
    '3010 3100* 3140 3000* 3090 3120*',
    '3060 3020* 3070 3080* 3100 3090',
  ];
  const three = good.map((card, at) => series(`s${at}`, card));

  it('is not given when there is enough', () => {
    expect(faultEffect(three, options()).kind).toBe('answer');
  });

  it.each<[string, readonly AssessedSeries[], Partial<EffectOptions>, object]>([
    ['STAGE_NOT_REACHED', three, { stages: { relevantFrom: 2, athlete: 1 } }, { missingThrows: null }],
    ['NOT_ASSESSED', [series('a', '3000- 3100-')], {}, { missingThrows: 1 }],
    // Fourteen of the eighteen throws; fifteen are 80 per cent.
    [
      'SCOPE_COVERAGE',
      [...three.slice(0, 2), series('c', '3060- 3020* 3070- 3080- 3100- 3090')],
      {},
      { have: 14, need: 15, missingThrows: 1 },
    ],
    ['OBSERVER_UNRELIABLE', three, { agreement: { kappa: 0.31, throws: 30 } }, { have: 31, need: 40 }],
    ['LT_INFORMATIVE_SERIES', three.slice(0, 2), {}, { have: 2, need: 3, missingThrows: 6 }],
    [
      'LT_PER_STATE',
      good.map((_, at) => series(`s${at}`, '3000 3100* 3050 3120')),
      {},
      { have: 3, need: 5, missingThrows: 2 },
    ],
    [
      'K_TOO_SMALL',
      ['3000* 3100', '3000* 3100', '3000* 3100', '3000 3100*', '3000 3100*'].map((card, at) =>
        series(`s${at}`, card),
      ),
      {},
      { have: 32, need: 100, missingThrows: 2 },
    ],
  ])('%s', (code, all, more, detail) => {
    expect(faultEffect(all, options(more))).toMatchObject({ kind: 'refused', code, ...detail });
  });

  it('does not come from few double notes', () => {
    expect(faultEffect(three, options({ agreement: { kappa: 0.31, throws: 29 } })).kind).toBe('answer');
  });

  it('comes for the line that counts when marks were known beforehand', () => {
    const known = good.map((card, at) => series(`s${at}`, card, { markKnown: true }));
    const lines = effectLines(known, {}, () => chanceOf(1));
    expect(lines.primary).toMatchObject({ code: 'NOT_ASSESSED' });
    expect(lines.all.kind).toBe('answer');
    const blind = effectLines(three, {}, () => chanceOf(1));
    expect(blind.primary).toEqual(blind.all);
    expect(blind.roundTakenOut.kind).toBe('answer');
  });

  it('within thirds of the rounds, notes move within pairs only: 2⁸ arrangements here', () => {
    // By hand: of the nine pairs of rounds eight have one throw with and one without.
    expect(faultEffect(three, options({ round: 'thirds' }))).toMatchObject({
      arrangements: 256,
      exact: true,
    });
  });
});

describe('prevalence', () => {
  it('is over throws that were looked at, fouls among them', () => {
    const found = prevalence([series('a', '3000* X* 3050- 3100'), series('b', '3000 3010 X 3020*')]);
    expect(found).toMatchObject({ k: 3, n: 7, notAssessed: 1 });
  });

  it('is not assessed when nobody looked, and has no interval for one series', () => {
    expect(prevalence([series('a', '3000- X-')])).toMatchObject({ code: 'NOT_ASSESSED' });
    expect(prevalence([series('a', '3000* 3100')])).toMatchObject({ k: 1, n: 2, interval: null });
  });

  it('leaves out throws that were voided on purpose', () => {
    const [one] = [series('a', '3000* X 3100')];
    const trials = one.trials.map((trial) => ({ ...trial, voidedOnPurpose: trial.markCm === null }));
    expect(prevalence([{ ...one, trials }])).toMatchObject({ k: 1, n: 2, notAssessed: 0 });
  });
});

function table([[withFoul, withValid], [withoutFoul, withoutValid]]: [
  [number, number],
  [number, number],
]): FoulTable {
  return { withFoul, withValid, withoutFoul, withoutValid };
}

describe('fouls and a fault', () => {
  const tables = (
    [
      [
        [4, 3],
        [6, 17],
      ],
      [
        [5, 2],
        [9, 12],
      ],
      [
        [2, 3],
        [10, 21],
      ],
    ] as [[number, number], [number, number]][]
  ).map(table);

  it('over three strata', () => {
    const found = mantelHaenszel(tables);
    expect(found?.oddsRatio).toBeCloseTo(2.6857798, 7);
    expect(found?.interval?.low).toBeCloseTo(0.94259856, 7);
    expect(found?.interval?.high).toBeCloseTo(7.65268857, 6);
    expect(found?.chiSquare).toBeCloseTo(3.42279, 5);
    expect(found?.p).toBeCloseTo(0.064302, 6);
    expect(found?.chiSquareCorrected).toBeCloseTo(2.5147, 4);
    expect(found?.pCorrected).toBeCloseTo(0.11279, 5);
    expect(found?.exact?.p).toBeCloseTo(0.10895, 5);
    expect(found?.riskDifference).toBeCloseTo(0.23454952, 8);
  });

  it('of four athletes', () => {
    const found = foulLink(FOUR, (one) => one.id.charAt(0));
    if (found.kind === 'refused') throw new Error(found.code);
    expect(found.oddsRatio).toBeCloseTo(8.1111, 4);
    expect(found.interval?.low).toBeCloseTo(1.3684521, 6);
    expect(found.interval?.high).toBeCloseTo(48.0763078, 5);
    expect(found.chiSquare).toBeCloseTo(5.99862, 5);
    expect(found.p).toBeCloseTo(0.014317, 6);
    expect(found.exact?.p).toBeCloseTo(0.017358, 6);
    expect(found.exact?.oddsRatio).toBeCloseTo(6.677, 3);
    expect({ sparse: found.sparse, p: found.decidingP }).toEqual({ sparse: true, p: found.exact?.p });
  });

  it('say so when the odds cannot be estimated', () => {
    // No foul without the fault: no odds ratio, but a difference and an exact p.
    const found = mantelHaenszel([
      table([
        [3, 2],
        [0, 6],
      ]),
    ]);
    expect(found).toMatchObject({ oddsRatio: null, interval: null });
    expect(found?.riskDifference).toBeCloseTo(0.6, 12);
    // Fisher by hand: C(5,3)·C(6,0)/C(11,3) = 10/165.
    expect(found?.exact?.p).toBeCloseTo(10 / 165, 12);
    expect(
      mantelHaenszel([
        table([
          [0, 5],
          [0, 6],
        ]),
      ]),
    ).toBeNull();
  });

  it('need five throws with it and five without', () => {
    expect(foulLink([series('a', '3000* X 3100 3110 X 3000 3050')])).toMatchObject({
      code: 'LT_PER_STATE',
      missingThrows: 4,
    });
    expect(foulLink([series('a', '3000- X-')])).toMatchObject({ code: 'NOT_ASSESSED' });
    expect(foulLink([series('a', '3000* 3000* 3000* 3000* 3000* 3000 3000 3000 3000 3000')])).toMatchObject({
      code: 'NOT_ESTIMABLE',
    });
  });
});

describe('many faults at once', () => {
  it('have the q of p.adjust', () => {
    const rates = falseDiscoveryRates([0.001, 0.008, 0.039, 0.041, 0.042, 0.06, 0.074, 0.205]);
    [0.008, 0.032, 0.0672, 0.0672, 0.0672, 0.08, 0.08457143, 0.205].forEach((q, at) =>
      expect(rates[at]).toBeCloseTo(q, 8),
    );
    expect(falseDiscoveryRates([0.04, 0.01])).toEqual([0.04, 0.02]);
  });

  it('leave refused ones out of the count', () => {
    const answer = (p: number) => ({ kind: 'answer', p }) as const;
    const refusal = {
      kind: 'refused',
      code: 'LT_PER_STATE',
      have: 1,
      need: 5,
      of: 'throws',
      missingThrows: 4,
    } as const;
    const found = screened([
      { code: 'A', answer: answer(0.04) },
      { code: 'B', answer: refusal },
      { code: 'C', answer: answer(0.3) },
    ]);
    expect(found.map(({ q, worthTesting }) => [q, worthTesting])).toEqual([
      [0.08, true],
      [null, false],
      [0.3, false],
    ]);
  });

  it('are answered together when they come and go together', () => {
    const cards: Record<string, string> = {
      A: '1* 2* 3 4 5* 6',
      B: '1* 2* 3 4 5* 6*',
      C: '1 2* 3* 4 5 6*',
    };
    const seriesOf = (code: string): AssessedSeries[] => [series('s', cards[code] ?? '')];
    // By hand, as a correlation of 0/1: A and B 1/√2.
    expect(phiWithin(seriesOf('A'), seriesOf('B'))).toBeCloseTo(Math.SQRT1_2, 9);
    expect(movingTogether(['A', 'B', 'C'], seriesOf)).toEqual([['A', 'B'], ['C']]);
  });
});

describe('pooling over athletes', () => {
  const own = [-1.4, -0.6, -2.1, 0.3, -0.9].map((effect, at) => ({
    athlete: `a${at}`,
    effect,
    error: [0.5, 0.4, 0.8, 0.6, 0.3][at] ?? 0,
  }));

  it('by Paule and Mandel, with two others beside', () => {
    const found = poolEffects(own);
    if (found.kind === 'refused') throw new Error(found.code);
    expect(found.q).toBeCloseTo(7.74333, 6);
    expect(found.betweenVariance).toBeCloseTo(0.36325009, 8);
    expect(found.mean).toBeCloseTo(-0.87279894, 8);
    expect(found.meanError).toBeCloseTo(0.3507696, 7);
    [-1.185079, -0.683417, -1.317136, -0.283764, -0.894599].forEach((pooled, at) =>
      expect(found.athletes[at]?.pooled).toBeCloseTo(pooled, 6),
    );
    expect(derSimonianLaird(own)).toBeCloseTo(0.20388196, 8);
    const { middle, weight } = weightedMean(own, derSimonianLaird(own));
    expect([middle, 1 / Math.sqrt(weight)]).toEqual([
      expect.closeTo(-0.86208265, 8),
      expect.closeTo(0.29731756, 8),
    ]);
    expect(restrictedLikelihoodVariance(own)).toBeCloseTo(0.15660563, 7);
  });

  it('makes all equal when they differ no more than chance would, and needs four', () => {
    const alike = own.map((one) => ({ ...one, effect: -1 + one.error / 10 }));
    expect(pauleMandel(alike)).toBe(0);
    const found = poolEffects(alike);
    if (found.kind === 'refused') throw new Error(found.code);
    for (const { pooled } of found.athletes) expect(pooled).toBeCloseTo(found.mean, 12);
    expect(poolEffects(own.slice(0, 3))).toMatchObject({ code: 'LT_ATHLETES', have: 3, need: 4 });
  });
});

describe('what to work on next', () => {
  const candidate = (
    code: string,
    beta: number,
    error: number,
    more: Partial<Candidate> = {},
  ): Candidate => ({
    code,
    phase: 1,
    seen: { k: 14, n: 36 },
    effect: { beta, error },
    fouls: null,
    stageReached: true,
    armOrShoulder: false,
    ...more,
  });
  const ranking = { typicalMarkCm: 1, foulCostCm: 0, growing: false };

  it('has the mean and spread of a product', () => {
    // Beta(14.5, 22.5) times 1.2 ± 0.4.
    const [found] = nextToWorkOn([candidate('A', -1.2, 0.4)], { ...ranking, chance: chanceOf(1) });
    expect(found?.expectedCm).toBeCloseTo(0.47027, 6);
    expect(found?.sdCm).toBeCloseTo(0.186029, 6);
    expect(found?.chanceOfTop).toBeCloseTo(1, 9);
    // The lower fifth of something nearly normal: 0.84 standard deviations down.
    expect(Math.abs((found?.cautiousCm ?? 0) - (0.47027 - 0.8416 * 0.186))).toBeLessThan(0.02);
  });

  it('puts what cannot be told apart into one group, the earlier phase first', () => {
    const found = nextToWorkOn(
      [
        candidate('SURE', -1.5, 0.1),
        candidate('LATE', -0.4, 0.3, { phase: 5 }),
        candidate('EARLY', -0.38, 0.3, { phase: 2 }),
        candidate('GAIN', 0.8, 0.1),
      ],
      { ...ranking, chance: chanceOf(2) },
    );
    expect(found.map(({ code, group }) => [code, group])).toEqual([
      ['SURE', 1],
      ['EARLY', 2],
      ['LATE', 2],
      ['GAIN', 3],
    ]);
    // What goes with longer throws keeps its sign.
    expect(found.at(-1)?.expectedCm).toBeLessThan(0);
  });

  it('adds what fouls cost', () => {
    const fouls = { riskDifference: 0.2, error: 0.05 };
    const [found] = nextToWorkOn([candidate('A', 0, 0.01, { fouls })], {
      ...ranking,
      foulCostCm: 50,
      chance: chanceOf(3),
    });
    expect(found?.expectedCm).toBeCloseTo((14.5 / 37) * 0.2 * 50, 9);
  });

  it('holds back what is not taught yet, and arm and shoulder of a growing athlete', () => {
    const all = [
      candidate('ARM', -2, 0.1, { armOrShoulder: true }),
      candidate('LATER', -2, 0.1, { stageReached: false }),
      candidate('FEET', -0.5, 0.1),
    ];
    const found = nextToWorkOn(all, { ...ranking, growing: true, chance: chanceOf(4) });
    expect(found.map(({ code, heldBack }) => [code, heldBack])).toEqual([
      ['FEET', null],
      ['ARM', 'ARM_OR_SHOULDER_IN_GROWTH'],
      ['LATER', 'STAGE_NOT_REACHED'],
    ]);
    expect(oneFocus(found)).toBe('FEET');
    expect(nextToWorkOn(all, { ...ranking, chance: chanceOf(4) })[0]?.code).toBe('ARM');
  });

  it('is nothing when nothing stands out', () => {
    expect(
      oneFocus(nextToWorkOn([candidate('A', 0.1, 0.2)], { ...ranking, chance: chanceOf(5) })),
    ).toBeNull();
    expect(nextToWorkOn([], { ...ranking, chance: chanceOf(5) })).toEqual([]);
  });
});
