import { fitMixed, type MixedData, type RandomTerm } from '../../libs/technique/src/numbers/mixed-model.js';
import { REACTIONS } from './reaction-data.js';

const rows = Object.entries(REACTIONS).flatMap(([subject, times]) =>
  times.map((time, day) => ({ subject, day, time })),
);
const groups = rows.map((row) => row.subject);
const level: RandomTerm = { groups, columns: rows.map(() => [1]) };
const slope: RandomTerm = { groups, columns: rows.map((row) => [row.day]) };
const levelAndSlope: RandomTerm = { groups, columns: rows.map((row) => [1, row.day]) };

function data(...random: RandomTerm[]): MixedData {
  return { y: rows.map((row) => row.time), fixed: rows.map((row) => [1, row.day]), random };
}

function near(found: readonly number[] | undefined, expected: readonly number[], within: number): void {
  expected.forEach((value, at) => expect(Math.abs((found?.[at] ?? 0) / value - 1)).toBeLessThan(within));
}

describe('the mixed model of reaction times', () => {
  it('REML with a level per subject: lme4 2.0.1, published', () => {
    const fit = fitMixed(data(level), 'REML');
    near(fit?.fixed, [251.40510485, 10.46728596], 1e-9);
    near(fit?.standardErrors, [9.74671627, 0.80422143], 1e-6);
    near([fit?.residualSd ?? 0], [30.9912339], 1e-6);
    near([(fit?.randomSds[0]?.[0] ?? 0) ** 2], [1378.17851352], 1e-5);
    near([(fit?.deviance ?? 0) / -2], [-893.2325427], 1e-9);
  });

  it('ML with a level per subject: a second independent fit', () => {
    const fit = fitMixed(data(level), 'ML');
    near([fit?.deviance ?? 0], [1794.078643], 1e-8);
    near(fit?.standardErrors, [9.506185, 0.801735], 1e-5);
    near([fit?.residualSd ?? 0, fit?.randomSds[0]?.[0] ?? 0], [30.89543, 36.01208], 1e-5);
  });

  it('ML with level and slope: the tests of MixedModels.jl, published', () => {
    const fit = fitMixed(data(levelAndSlope), 'ML');
    near([fit?.deviance ?? 0], [1751.9393445], 1e-9);
    near(fit?.fixed, [251.40510484848477, 10.4672859595959], 1e-9);
    near(fit?.standardErrors, [6.632246393963571, 1.502190605041084], 1e-4);
    near([fit?.residualSd ?? 0], [25.59181315643851], 1e-4);
    near(fit?.randomSds[0], [23.78058820861926, 5.716840462986926], 1e-4);
  });

  it('REML with level and slope: a second independent fit', () => {
    const fit = fitMixed(data(levelAndSlope), 'REML');
    near([fit?.deviance ?? 0], [1743.628272], 1e-8);
    near(fit?.standardErrors, [6.824557, 1.545789], 1e-4);
    near(fit?.randomSds[0], [24.74045, 5.92213], 1e-4);
  });

  it('ML with level and slope that are not correlated: the tests of MixedModels.jl, published', () => {
    const fit = fitMixed(data(level, slope), 'ML');
    near([fit?.deviance ?? 0], [1752.0032551398835], 1e-9);
    near(fit?.standardErrors, [6.7076736612161145, 1.5193146383267642], 1e-4);
    near([fit?.residualSd ?? 0], [25.55613439255097], 1e-4);
    near(
      [fit?.randomSds[0]?.[0] ?? 0, fit?.randomSds[1]?.[0] ?? 0],
      [24.171265054796056, 5.799409265326568],
      1e-4,
    );
  });

  it('has no answer when a fixed column says the same as another', () => {
    expect(fitMixed({ ...data(level), fixed: rows.map(() => [1, 2]) }, 'ML')).toBeNull();
  });
});
