import {
  bestAndMedian,
  chanceOf,
  consistency,
  foulRate,
  lastAttempt,
  markDistribution,
  openingTrial,
  practiceToCompetition,
  roundEffect,
  trends,
  type Answer,
  type PracticeTrial,
  type Series,
} from '#technique';
import { fixedEffect } from '../../libs/technique/src/within-series/within-series-test.js';
import { ratioOf } from '../../libs/technique/src/marks/practice-to-competition.js';
import { signFlip } from '../../libs/technique/src/marks/last-attempt.js';
import {
  clusteredProportion,
  clopperPearson,
  jeffreys,
  wilson,
} from '../../libs/technique/src/marks/proportion.js';
import { smoothLine } from '../../libs/technique/src/marks/smooth-line.js';
import { theilSen } from '../../libs/technique/src/marks/theil-sen.js';
import { ONE_ATHLETE } from './one-athlete.js';

// Where nothing else is named, values were computed with Python 3.11/scipy 1.17 or R 4.2.2 on the invented cards.

function given<T>(answer: Answer<T>): T {
  if (answer.kind === 'refused') throw new Error(answer.code);
  return answer;
}

function series(id: string, cells: readonly (number | null)[], more: Partial<Series> = {}): Series {
  const trials = cells.map((markCm, at) => ({ round: at + 1, markCm }));
  return { id, day: 0, implement: 'shot-4000', trials, ...more };
}

describe('the marks of one athlete', () => {
  it('lie where they lie', () => {
    const { count, fouls, summary, bestCm, worstCm, marks } = given(markDistribution(ONE_ATHLETE));
    expect([count, fouls, bestCm, worstCm, marks.length]).toEqual([26, 10, 3510, 3088, 26]);
    expect(summary?.meanCm).toBeCloseTo(3310.4231, 4);
    expect(summary?.sdCm).toBeCloseTo(108.2967, 4);
    expect(summary?.medianCm).toBeCloseTo(3312.5, 9);
  });

  it('are only listed when there are fewer than three, and refused when there are none', () => {
    expect(given(markDistribution([series('a', [900, null, 950])])).summary).toBeNull();
    expect(markDistribution([series('a', [null])])).toMatchObject({ code: 'NO_MARK', missingThrows: 1 });
  });

  it('of two implements are not put together', () => {
    const two = [series('a', [900]), series('b', [800], { implement: 'shot-5000' })];
    for (const answer of [markDistribution(two), consistency(two), bestAndMedian(two)]) {
      expect(answer).toMatchObject({ kind: 'refused', code: 'MIXED_IMPLEMENT' });
    }
  });

  it('are as consistent as they are within series', () => {
    const { sdCm, freedom, interval, cvPercent } = given(consistency(ONE_ATHLETE));
    expect(sdCm).toBeCloseTo(55.8634, 4);
    expect(freedom).toBe(20);
    expect(interval.low).toBeCloseTo(42.7388, 4);
    expect(interval.high).toBeCloseTo(80.6707, 4);
    expect(cvPercent).toBeCloseTo(1.68904, 5);
  });

  it('do not tell consistency below eight degrees of freedom, and say how many throws are missing', () => {
    const two = [series('a', [900, 910, 905]), series('b', [890, 899, 902])];
    // Four degrees are missing; of three marks a series gives two.
    expect(consistency(two)).toMatchObject({ code: 'LT_FREEDOM', have: 4, need: 8, missingThrows: 6 });
  });

  it('have a best above their middle', () => {
    const rows = bestAndMedian(ONE_ATHLETE);
    if ('kind' in rows) throw new Error(rows.code);
    const gaps = rows.map(({ gapCm }) => gapCm);
    [48, 76.5, 55, 41.5, 58, 90].forEach((gap, at) => expect(gaps[at]).toBeCloseTo(gap, 9));
  });
});

describe('a share', () => {
  it.each([
    [10, 36, [0.158483, 0.439925], [0.152658, 0.437026]],
    [5, 17, [0.1328, 0.531331], [0.122166, 0.529751]],
    [0, 12, [0, 0.242494], [0, 0.185306]],
  ])('of %d in %d', (k, n, byWilson, byJeffreys) => {
    const [one, other] = [wilson(k, n, 0.95), jeffreys(k, n, 0.95)];
    expect(one.low).toBeCloseTo(byWilson[0] ?? 0, 6);
    expect(one.high).toBeCloseTo(byWilson[1] ?? 0, 6);
    expect(other.low).toBeCloseTo(byJeffreys[0] ?? 0, 6);
    expect(other.high).toBeCloseTo(byJeffreys[1] ?? 0, 6);
  });

  it('of 5 in 17, exactly (binom.test of R)', () => {
    const { low, high } = clopperPearson(5, 17, 0.95);
    expect(low).toBeCloseTo(0.103136, 6);
    expect(high).toBeCloseTo(0.559583, 6);
  });

  it('is open at the end where everything was seen', () => {
    expect(jeffreys(12, 12, 0.95).high).toBe(1);
    expect(wilson(12, 12, 0.95).high).toBe(1);
  });

  it('over series that hang together is less sure', () => {
    const groups = ['111011', '001000', '000010', '110111'].map((text) => [...text].map((c) => c === '1'));
    const { icc, designEffect, interval, n } = clusteredProportion(groups, 0.95);
    expect(icc).toBeCloseTo(0.41935484, 8);
    expect(designEffect).toBeCloseTo(3.09677419, 8);
    expect(n / designEffect).toBeCloseTo(7.75, 2);
    expect(interval?.low).toBeCloseTo(0.212161, 5);
    expect(interval?.high).toBeCloseTo(0.787839, 5);
    const naive = wilson(12, 24, 0.95);
    expect([naive.low, naive.high].map((end) => end.toFixed(6))).toEqual(['0.314274', '0.685726']);
  });

  it('has no interval for one series, and no design effect below one', () => {
    expect(clusteredProportion([[true, false]], 0.95).interval).toBeNull();
    const even = clusteredProportion(
      [
        [true, false],
        [false, true],
        [true, false],
      ],
      0.95,
    );
    expect(even.icc).toBeLessThan(0);
    expect(even.designEffect).toBe(1);
  });
});

describe('fouls', () => {
  it('are counted over trials that were meant', () => {
    const { k, n, independent } = given(foulRate(ONE_ATHLETE));
    expect([k, n]).toEqual([10, 36]);
    expect(independent.low).toBeCloseTo(0.152658, 6);
    const voided = ONE_ATHLETE.map((one) => ({
      ...one,
      trials: one.trials.map((trial) =>
        trial.markCm === null ? { ...trial, voidedOnPurpose: true } : trial,
      ),
    }));
    expect(given(foulRate(voided))).toMatchObject({ k: 0, n: 26 });
  });

  it('are no rate below ten throws', () => {
    expect(foulRate([series('a', [900, null, 910])])).toMatchObject({ code: 'LT_THROWS', missingThrows: 7 });
  });
});

describe('rounds', () => {
  it('are set against the mean of their series', () => {
    const { rounds, slope } = given(roundEffect(ONE_ATHLETE, { chance: chanceOf(3) }));
    const expected = [-19.1, -24.813, 21.937, -10.9, 37.187, 3.188];
    expected.forEach((cm, at) => expect(rounds[at]?.aboveSeriesMeanCm).toBeCloseTo(cm, 2));
    expect(slope.beta).toBeCloseTo(7.80737, 4);
    expect(rounds.every(({ p }) => p > 0.05)).toBe(true);
  });

  it('have the slope of least squares', () => {
    const blocks = ONE_ATHLETE.map(({ trials }) => {
      const marked = trials.filter((trial) => trial.markCm !== null);
      return { x: marked.map((trial) => trial.round), y: marked.map((trial) => (trial.markCm ?? 0) / 100) };
    });
    expect(fixedEffect(blocks)?.beta).toBeCloseTo(0.07807377, 8);
  });

  it('show one that stands out, and need three series of five trials', () => {
    const third = [0, 1, 2, 3, 4, 5].map((at) => series(`s${at}`, [900, 901 + at, 990, 902, 899 - at, 900]));
    const { rounds } = given(roundEffect(third, { chance: chanceOf(3) }));
    expect(rounds[2]?.p).toBeLessThan(0.01);
    expect(rounds[1]?.p).toBeGreaterThan(0.05);
    const short = ONE_ATHLETE.map((one) => ({ ...one, trials: one.trials.slice(0, 4) }));
    expect(roundEffect(short, { chance: chanceOf(3) })).toMatchObject({ code: 'LT_SERIES', need: 3 });
  });
});

describe('the last trial', () => {
  it('by turning signs: 12 of 128', () => {
    const found = signFlip([0.8, -0.3, 1.1, 0.4, -0.2, 0.9, 0.5]);
    expect(found?.mean).toBeCloseTo(0.457143, 6);
    expect(found?.p).toBe(12 / 128);
  });

  it('needs six series with a mark in it', () => {
    // Two of the six last trials were fouls.
    expect(lastAttempt(ONE_ATHLETE)).toMatchObject({ code: 'LT_SERIES', have: 4, need: 6, missingThrows: 2 });
    const six = [10, 20, 5, 30, 15, 25].map((more, at) => series(`s${at}`, [900, null, 910, 905 + more]));
    expect(given(lastAttempt(six))).toMatchObject({
      count: 6,
      p: 2 / 64,
      lastFouls: { fouls: 0, trials: 6 },
      earlierFouls: { fouls: 6, trials: 18 },
    });
  });
});

describe('the first trial', () => {
  it('was valid in so many series', () => {
    expect(given(openingTrial(ONE_ATHLETE))).toMatchObject({ valid: 5, series: 6 });
    expect(openingTrial(ONE_ATHLETE.slice(0, 2))).toMatchObject({ code: 'LT_SERIES', missingThrows: 3 });
  });
});

describe('practice to competition', () => {
  it('is a ratio over logarithms', () => {
    const [practice, competition] = [
      [3310, 3390, 3460, 3500],
      [3220, 3360, 3390, 3420],
    ];
    const pairs = (practice ?? []).map((cm, at) => ({
      practiceCm: cm,
      competitionCm: competition?.[at] ?? 0,
    }));
    const { ratio, interval } = ratioOf(pairs, 0.95);
    expect(ratio).toBeCloseTo(0.980195, 6);
    expect(interval.low).toBeCloseTo(0.967839, 6);
    expect(interval.high).toBeCloseTo(0.992708, 6);
  });

  it('pairs each competition with the fortnight before it and the same implement', () => {
    const trial = (markCm: number, measured = true): PracticeTrial => ({ round: 1, markCm, measured });
    const practices = [1, 21, 41, 61].map((day) => ({
      ...series(`p${day}`, []),
      day,
      trials: [trial(1000), trial(1010), trial(990, day !== 41)],
    }));
    const competitions = [10, 30, 50, 70].map((day) => series(`c${day}`, [980, 990, null], { day }));
    const found = given(practiceToCompetition(competitions, practices));
    expect(found.pairs.map(({ practiceCm, competitionCm }) => [practiceCm, competitionCm])).toEqual(
      Array.from({ length: 4 }, () => [1000, 985]),
    );
    expect(found.estimatedMarks).toBe(true);
    // Four of four to one side: two of the sixteen ways to turn signs.
    expect(found.p).toBeCloseTo(2 / 16, 12);
    const heavier = practices.map((one) => ({ ...one, implement: 'shot-5000' }));
    expect(practiceToCompetition(competitions, heavier)).toMatchObject({
      code: 'LT_PAIRS',
      have: 0,
      need: 4,
    });
  });
});

describe('the trend', () => {
  const [trend] = trends(ONE_ATHLETE);
  if (!trend) throw new Error('no trend');

  it('of bests by Theil and Sen', () => {
    const line = given(trend.lineOfBests);
    expect(line.slopeCmPerDay).toBeCloseTo(3.5, 9);
    expect(line.interceptCm).toBeCloseTo(3214.25, 9);
    expect(line.interval.low).toBeCloseTo(2.38095, 5);
    expect(line.interval.high).toBeCloseTo(4.21429, 5);
    expect(line.tau).toBe(1);
    expect(line.p).toBeCloseTo(0.00277778, 8);
  });

  it('of medians', () => {
    const line = given(trend.line);
    expect(line.slopeCmPerDay).toBeCloseTo(3.071429, 6);
    expect(line.interval.low).toBeCloseTo(2.125, 6);
    expect(line.interval.high).toBeCloseTo(3.8, 6);
  });

  it('is broken where the implement changes, and refused below five competitions', () => {
    const changed = ONE_ATHLETE.map((one, at) => ({
      ...one,
      implement: at < 3 ? 'discus-1000' : 'discus-1250',
    }));
    const lines = trends(changed);
    expect(lines.map(({ implement, bests }) => [implement, bests.length])).toEqual([
      ['discus-1000', 3],
      ['discus-1250', 3],
    ]);
    expect(lines[0]?.line).toMatchObject({ code: 'LT_COMPETITIONS', have: 3, need: 5 });
  });

  it('leaves out pairs of the same day', () => {
    const points = [0, 0, 1, 2, 3].map((day, at) => ({ day, cm: 100 + at }));
    expect(given(theilSen(points)).slopeCmPerDay).toBeCloseTo(1, 1);
    const oneDay = points.map(({ cm }) => ({ day: 1, cm }));
    expect(theilSen(oneDay)).toMatchObject({ kind: 'refused' });
  });

  it('is drawn as a smooth line through the bests', () => {
    // loess of R (span 1, degree 1) interpolates between the corners of a grid, this evaluates at each day: up to 0.3 mm apart.
    const drawn = smoothLine(trend.bests).map(({ cm }) => cm);
    [3225.9535, 3273.9579, 3345.7208, 3410.7646, 3455.9437, 3502.3728].forEach((cm, at) =>
      expect(Math.abs((drawn[at] ?? 0) - cm)).toBeLessThan(0.03),
    );
  });
});
