import {
  brierScore,
  chanceOfBest,
  chanceOfStandard,
  expectedBest,
  foulCost,
  plannedEffect,
  throwsPerArm,
  type ThrowModel,
} from '#technique';
import { furtherThrows } from '../../libs/technique/src/faults/how-many.js';
import { filterLevel, localLevel } from '../../libs/technique/src/marks/local-level.js';
import { trends } from '../../libs/technique/src/marks/trend.js';
import { NILE } from './nile-data.js';
import { ONE_ATHLETE } from './one-athlete.js';

// Where nothing else is named: computed with Python 3.11/scipy 1.17.

function model(more: Partial<ThrowModel> = {}): ThrowModel {
  return { meanCm: 4000, throwSdCm: 150, daySdCm: 0, foulRate: 0.25, trials: 6, ...more };
}

describe('the chance of reaching a mark', () => {
  it.each([
    [{}, 4200, 0.3463378],
    [{ daySdCm: 100 }, 4200, 0.3914673],
    [{ daySdCm: 100, trials: 3 }, 4200, 0.2471173],
    [{ daySdCm: 100, foulRate: 0 }, 4200, 0.4641373],
    [{ daySdCm: 100 }, 4500, 0.0118745],
  ])('with %p is %d', (more, markCm, chance) => {
    expect(Math.abs(chanceOfBest(model(more), markCm) - chance)).toBeLessThan(1e-6);
  });

  it('holds where the day counts for more than the throw', () => {
    // A limit that needs no integral: with hardly any spread of throws the best is the day's level.
    const chance = chanceOfBest(model({ throwSdCm: 0.01, daySdCm: 300, foulRate: 0 }), 4300);
    expect(chance).toBeCloseTo(0.158655, 4);
  });
});

describe('the expected best', () => {
  it.each([
    [0.25, 6, 4161.2911, 0.00024414],
    [0.25, 3, 4090.6733, 0.015625],
    [0.25, 4, 4120.732, 0.00390625],
    [0, 6, 4190.081, 0],
    [0.5, 6, 4116.8432, 0.015625],
  ])('with fouls %d and %d trials', (foulRate, trials, bestCm, noMark) => {
    const found = expectedBest(model({ foulRate, trials }));
    expect(found.bestCm).toBeCloseTo(bestCm, 3);
    expect(found.noMark).toBeCloseTo(noMark, 8);
  });

  it('is 37.5 cm less with 40 than with 15 per cent of fouls', () => {
    expect(foulCost(model(), 0.15, 0.4)).toBeCloseTo(37.4751, 3);
    expect([
      expectedBest(model({ foulRate: 0.4, trials: 3 })).noMark,
      expectedBest(model({ foulRate: 0.15, trials: 3 })).noMark,
    ]).toEqual([expect.closeTo(0.064, 9), expect.closeTo(0.003375, 9)]);
  });
});

describe('the outlook for a standard', () => {
  it('is a range, surer for a lower one', () => {
    const question = { day: 90, trials: 6 };
    const near = chanceOfStandard(ONE_ATHLETE, { ...question, standardCm: 3450 });
    const far = chanceOfStandard(ONE_ATHLETE, { ...question, standardCm: 3650 });
    if (near.kind === 'refused' || far.kind === 'refused') throw new Error('refused');
    expect(near.chance).toBeGreaterThan(far.chance);
    for (const { low, chance, high } of [near, far]) {
      expect(low).toBeLessThanOrEqual(chance + 0.05);
      expect(high).toBeGreaterThanOrEqual(chance - 0.05);
    }
    expect(near.followsTrend).toBe(true);
    expect(near.model.foulRate).toBeCloseTo(10.5 / 37, 9);
  });

  it('is refused for fewer than three competitions, and beyond what the data can tell', () => {
    const question = { standardCm: 3450, day: 90, trials: 6 };
    expect(chanceOfStandard(ONE_ATHLETE.slice(0, 2), question)).toMatchObject({
      code: 'LT_COMPETITIONS',
      need: 3,
    });
    // Best 35.10 and three times 1.083: 38.34.
    expect(chanceOfStandard(ONE_ATHLETE, { ...question, standardCm: 3834 }).kind).toBe('answer');
    expect(chanceOfStandard(ONE_ATHLETE, { ...question, standardCm: 3835 })).toMatchObject({
      code: 'OUTSIDE_THE_DATA',
    });
  });

  it('is scored afterwards', () => {
    expect(
      brierScore([
        { chance: 0.8, reached: true },
        { chance: 0.4, reached: false },
      ]),
    ).toBeCloseTo(0.1, 12);
  });
});

describe('a level that wanders', () => {
  // The Nile at Aswan, 1871–1970 (Durbin and Koopman; R's data set), and StructTS of R.
  const points = NILE.map((cm, day) => ({ day, cm }));

  it('has the likelihood, level and variance of R on the Nile', () => {
    const { logLikelihood, level, variance } = filterLevel(points, 15_099, 1469.1);
    expect(logLikelihood).toBeCloseTo(-632.54562512, 6);
    expect(level).toBeCloseTo(798.37029, 4);
    expect(variance).toBeCloseTo(4032.15794, 4);
  });

  it('finds the variances that R finds', () => {
    const found = localLevel(points);
    if (found.kind === 'refused') throw new Error(found.code);
    expect(Math.abs(found.noise / 15_098.5772 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.perDay / 1469.1466 - 1)).toBeLessThan(1e-3);
  });

  it('follows uneven days', () => {
    const bests = (trends(ONE_ATHLETE)[0]?.bests ?? []).map(({ day, cm }) => ({ day, cm: cm / 100 }));
    const { logLikelihood, level, variance } = filterLevel(bests, 0.16, 0.0008);
    expect(logLikelihood).toBeCloseTo(-15.2879037, 7);
    expect(level).toBeCloseTo(34.00713385, 7);
    expect(variance).toBeCloseTo(0.041899, 7);
    expect(localLevel(bests)).toMatchObject({ code: 'LT_COMPETITIONS', have: 6, need: 8 });
  });
});

describe('how much data', () => {
  // Simulated errors (seed 7) printed to two decimals; two competitions are few enough for the simulation to lie lower.
  it.each([
    [0.5, 4, 2.01, 5.6],
    [0.5, 6, 1.63, 4.6],
    [0.5, 10, 1.26, 3.5],
    [0.5, 15, 1.03, 2.9],
    [0.2, 10, 1.59, null],
    [0.2, 15, 1.3, null],
  ])('at a prevalence of %d and %d competitions', (prevalence, series, errorPercent, leastPercent) => {
    const found = plannedEffect({ series, throwsPerSeries: 6, prevalence, sdPercent: 4.5 });
    expect(Math.abs(found.errorPercent / errorPercent - 1)).toBeLessThan(0.02);
    if (leastPercent !== null) expect(Math.abs(found.leastPercent / leastPercent - 1)).toBeLessThan(0.02);
  });

  it.each([
    [4.5, 3, 36],
    [4.5, 2, 80],
    [6, 3, 63],
  ])('SD %d %%, effect %d %%: %d a side', (sd, effect, throws) => {
    expect(throwsPerArm(sd, effect)).toBe(throws);
  });

  it('falls with the root of the throws', () => {
    // At twice the error that is wanted four times the throws: three times as many again.
    expect(furtherThrows(100, -0.01, (2 * 0.01) / 1.6448536)).toBeCloseTo(300, -1);
    expect(furtherThrows(100, -0.05, 0.01)).toBe(0);
    expect(furtherThrows(100, 0, 0.01)).toBeNull();
  });
});
