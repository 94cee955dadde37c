import { lag1Autocorrelation, mean, standardDeviation } from '../../libs/technique/src/numbers/moments.js';
import { straightLine } from '../../libs/technique/src/numbers/straight-line.js';
import { analyseVariance } from '../../libs/technique/src/numbers/variance-analysis.js';
import { LEW, MAVRO, NORRIS, SI_RSTV, SM_LS_PATTERN } from './nist-data.js';

/** Relative to the certified value (NIST StRD). */
function certified(found: number | undefined, value: number, within: number): void {
  expect(Math.abs((found ?? Number.NaN) / value - 1)).toBeLessThan(within);
}

describe('certified values of NIST', () => {
  it.each([
    ['Lew', LEW, -177.435, 277.332168044316, -0.307304800605679],
    ['Mavro', MAVRO, 2.001856, 0.000429123454003053, 0.937989183438248],
  ])('univariate %s', (_name, values, middle, sd, lag1) => {
    certified(mean(values), middle, 1e-14);
    certified(standardDeviation(values), sd, 1e-11);
    certified(lag1Autocorrelation(values), lag1, 1e-11);
  });

  it('straight line Norris', () => {
    const line = straightLine(NORRIS.x, NORRIS.y);
    certified(line?.intercept, -0.262323073774029, 1e-11);
    certified(line?.slope, 1.00211681802045, 1e-13);
    certified(line?.interceptError, 0.232818234301152, 1e-10);
    certified(line?.slopeError, 0.429796848199937e-3, 1e-10);
    certified(line?.residualSd, 0.884796396144373, 1e-10);
    certified(line?.rSquared, 0.999993745883712, 1e-13);
    expect(line?.freedom).toBe(34);
  });

  it('analysis of variance SiRstv', () => {
    const found = analyseVariance(SI_RSTV);
    certified(found?.f, 1.18046237440255, 1e-10);
    certified(found?.squaresBetween, 5.11462616e-2, 1e-10);
    certified(found?.squaresWithin, 2.1663656e-1, 1e-10);
    certified(found?.rSquared, 1.90999039051129e-1, 1e-10);
    expect([found?.freedomBetween, found?.freedomWithin]).toEqual([4, 20]);
  });

  // SmLs04 has seven digits in common: a sum of squares in one pass fails it. What the data lose as binary numbers
  // (1e-10 of 0.1) bounds what any program can reach.
  it.each([
    ['SmLs01', 0, 1e-12],
    ['SmLs04', 999_999, 1e-8],
  ])('analysis of variance %s', (_name, plus, within) => {
    const groups = SM_LS_PATTERN.map((three) =>
      Array.from({ length: 21 }, (_, at) => (three[at === 0 ? 0 : 2 - (at % 2)] ?? 0) + plus),
    );
    const found = analyseVariance(groups);
    certified(found?.f, 21, within);
    certified(found?.squaresBetween, 1.68, within);
    certified(found?.squaresWithin, 1.8, within);
    expect([found?.freedomBetween, found?.freedomWithin]).toEqual([8, 180]);
  });
});
