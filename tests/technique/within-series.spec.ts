import { chanceOf } from '../../libs/technique/src/numbers/random.js';
import { grouped } from '../../libs/technique/src/numbers/moments.js';
import { fitMixed } from '../../libs/technique/src/numbers/mixed-model.js';
import { straightLine } from '../../libs/technique/src/numbers/straight-line.js';
import { fixedEffect, withinSeriesTest } from '../../libs/technique/src/within-series/within-series-test.js';
import { CARD_ROWS } from './four-athletes.js';

const marked = CARD_ROWS.flatMap((row) =>
  row.markCm === null ? [] : [{ ...row, log: Math.log(row.markCm / 100) }],
);
const blocks = [...grouped(marked, (row) => row.competition).values()].map((rows) => ({
  x: rows.map((row) => row.noted),
  y: rows.map((row) => row.log),
}));

// Fits by R 4.2.2 and lme4, permutations by Python 3.11; the data are invented with a true effect of −3 %.
describe('four athletes, three competitions each', () => {
  it('have 52 marks, 19 of them with the point', () => {
    expect([marked.length, marked.filter((row) => row.noted === 1).length]).toEqual([52, 19]);
  });

  it('mislead when they are thrown together: −27 %, because the weakest shows the point nearly always', () => {
    const line = straightLine(
      marked.map((row) => row.noted),
      marked.map((row) => row.log),
    );
    expect(line?.slope).toBeCloseTo(-0.31937378, 8);
    expect((line?.slope ?? 0) / (line?.slopeError ?? 1)).toBeCloseTo(-6.93, 2);
  });

  it('by least squares with a level per series', () => {
    const fit = fixedEffect(blocks);
    expect(fit?.beta).toBeCloseTo(-0.019845424, 9);
    expect(fit?.standardError).toBeCloseTo(0.016294943, 8);
    expect(fit?.freedom).toBe(39);
    expect(fit?.p).toBeCloseTo(0.2306, 4);
  });

  it('by all 10,800 arrangements', () => {
    const found = withinSeriesTest(blocks, { level: 0.9, draws: 2000, chance: chanceOf(1) });
    expect(found).toMatchObject({ arrangements: 10_800, exact: true, blocks: 12, informativeBlocks: 6 });
    expect(found?.p).toBeCloseTo(0.32037037, 8);
    expect(100 * (Math.exp(found?.beta ?? 0) - 1)).toBeCloseTo(-1.965, 3);
  });

  it('by a mixed model with levels for athletes and competitions', () => {
    const random = [
      { groups: marked.map((row) => row.competition), columns: marked.map(() => [1]) },
      { groups: marked.map((row) => row.athlete), columns: marked.map(() => [1]) },
    ];
    const y = marked.map((row) => row.log);
    const fit = fitMixed({ y, random, fixed: marked.map((row) => [1, row.noted]) }, 'REML');
    expect(fit?.deviance).toBeCloseTo(-159.73302, 4);
    expect(fit?.fixed[1]).toBeCloseTo(-0.036265792, 6);
    expect(fit?.standardErrors[1]).toBeCloseTo(0.015280501, 6);
    expect(fit?.randomSds[0]?.[0]).toBeCloseTo(0.011774, 4);
    expect(fit?.randomSds[1]?.[0]).toBeCloseTo(0.233028, 4);
    expect(fit?.residualSd).toBeCloseTo(0.037303, 5);
    const rounds = fitMixed({ y, random, fixed: marked.map((row) => [1, row.noted, row.round]) }, 'REML');
    expect(rounds?.fixed[1]).toBeCloseTo(-0.036870728, 6);
    expect(rounds?.standardErrors[1]).toBeCloseTo(0.015293386, 6);
    expect(rounds?.fixed[2]).toBeCloseTo(0.003057283, 6);
    expect(rounds?.standardErrors[2]).toBeCloseTo(0.003057776, 6);
  });
});
