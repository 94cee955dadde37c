import { combinedPoints } from './count-combined.js';
import {
  FORMULAS,
  formulaUnit,
  type CombinedEventCode,
  type Formula,
  type ScoringSex,
} from './scoring-table.js';

type Check = [sex: ScoringSex, event: CombinedEventCode, hundredths: number, points: number];

describe('points of a performance', () => {
  // decathlon2000.com/3286 lists the performances that are worth 1000 points, and others.
  it.each<Check>([
    ['M', '100m', 1039, 1001],
    ['M', '100m', 958, 1202],
    ['M', 'long-jump', 776, 1000],
    ['M', 'shot', 1840, 1000],
    ['M', 'high-jump', 165, 504],
    ['M', 'high-jump', 211, 906],
    ['M', '400m', 4617, 1000],
    ['M', '110mh', 1380, 1000],
    ['M', 'discus', 5617, 1000],
    ['M', 'pole-vault', 430, 702],
    ['M', 'javelin', 7719, 1000],
    ['M', '1500m', 23379, 1000],
    ['W', '100mh', 1385, 1000],
    ['W', 'shot', 1707, 1000],
    ['W', '200m', 2380, 1000],
    ['W', 'javelin', 5718, 1000],
    ['W', '800m', 12763, 1000],
  ])('%s %s %i is worth %i', (sex, event, hundredths, points) => {
    expect(combinedPoints(sex, event, hundredths)).toBe(points);
  });

  // The performances are those of a broadcaster's explainer of the heptathlon (BBC Sport), which prints no points
  // for them; the points were computed with the public coefficients, so this holds the constants and not the formula.
  it.each<Check>([
    ['W', 'high-jump', 182, 1003],
    ['W', 'long-jump', 648, 1001],
  ])('%s %s %i is worth %i', (sex, event, hundredths, points) => {
    expect(combinedPoints(sex, event, hundredths)).toBe(points);
  });

  // Cells of a published table from 500 to 1000 points where the exact value passes the multiple of its line.
  it.each<Check>([
    ['M', 'long-jump', 695, 802],
    ['M', '110mh', 1541, 801],
    ['M', 'high-jump', 221, 1002],
  ])('%s %s %i is worth %i', (sex, event, hundredths, points) => {
    expect(combinedPoints(sex, event, hundredths)).toBe(points);
  });

  // european-athletics.org prints 17.87 m and 23.20 s for 1000 points of women: a misprint for 17.07 and 23.80.
  it.each<Check>([
    ['W', 'shot', 1787, 1054],
    ['W', '200m', 2320, 1059],
  ])('%s %s %i is worth %i', (sex, event, hundredths, points) => {
    expect(combinedPoints(sex, event, hundredths)).toBe(points);
  });

  it.each<Check>([
    ['M', '100m', 1800, 0],
    ['M', '100m', 1801, 0],
    ['M', '100m', 5999, 0],
    ['M', 'high-jump', 75, 0],
    ['M', 'high-jump', 76, 0],
    ['M', 'shot', 150, 0],
    ['W', 'javelin', 1, 0],
  ])('%s %s %i, not or hardly better than b, is worth %i', (sex, event, hundredths, points) => {
    expect(combinedPoints(sex, event, hundredths)).toBe(points);
  });

  it('is not given where a table has no formula', () => {
    expect(combinedPoints('W', '110mh', 1400)).toBeNull();
    expect(combinedPoints('M', '800m', 12000)).toBeNull();
  });
});

describe('the points function against logarithms of forty digits', () => {
  const all = (Object.keys(FORMULAS) as ScoringSex[]).flatMap((sex) =>
    Object.entries(FORMULAS[sex]).map(([event, formula]) => ({
      sex,
      event: event as CombinedEventCode,
      formula,
    })),
  );

  it.each(all)('$sex $event, every seventh hundredth', ({ sex, event, formula }) => {
    const differing: string[] = [];
    for (const hundredths of seventhHundredths(event, formula)) {
      const expected = pointsByLogarithm(event, formula, hundredths);
      const points = combinedPoints(sex, event, hundredths);
      if (points !== expected) differing.push(`${hundredths}: ${points}, not ${expected}`);
    }
    expect(differing).toEqual([]);
  });
});

/** Everything that scores in a race; in a jump to 10 m and in a throw to 120 m. */
function seventhHundredths(event: CombinedEventCode, { b }: Formula): number[] {
  const unit = formulaUnit(event);
  const limit = Math.round(Number(b) * (unit === 'centimetres' ? 1 : 100));
  const [start, end] = unit === 'seconds' ? [1, limit] : [limit + 1, unit === 'metres' ? 12_000 : 1_000];
  const performances: number[] = [];
  for (let hundredths = start; hundredths < end; hundredths += 7) performances.push(hundredths);
  return performances;
}

const DIGITS = 40;
const ONE = 10n ** BigInt(DIGITS);

/** exp(ln a + c·ln x) in fixed point; refuses to decide where that is too near to a whole number to be sure. */
function pointsByLogarithm(event: CombinedEventCode, { a, b, c }: Formula, hundredths: number): number {
  const performance = BigInt(hundredths) * (ONE / (formulaUnit(event) === 'centimetres' ? 1n : 100n));
  const x = formulaUnit(event) === 'seconds' ? fixed(b) - performance : performance - fixed(b);
  const points = exponential(logarithm(fixed(a)) + (fixed(c) * logarithm(x)) / ONE);
  const beyond = points % ONE;
  const margin = ONE / 10n ** 25n;
  if (beyond < margin || beyond > ONE - margin)
    throw new Error(`${event} ${hundredths} is too near to decide.`);
  return Number(points / ONE);
}

function fixed(decimal: string): bigint {
  const [whole = '', decimals = ''] = decimal.split('.');
  return BigInt(whole + decimals.padEnd(DIGITS, '0'));
}

/** ln y = 2·artanh((y − 1)/(y + 1)), after halving or doubling y into [1, 2). */
function logarithm(value: bigint): bigint {
  let [y, halvings] = [value, 0n];
  for (; y >= 2n * ONE; halvings += 1n) y /= 2n;
  for (; y < ONE; halvings -= 1n) y *= 2n;
  return artanhTwice(((y - ONE) * ONE) / (y + ONE)) + halvings * LN_2;
}

function artanhTwice(z: bigint): bigint {
  const square = (z * z) / ONE;
  let sum = 0n;
  for (let [power, n] = [z, 1n]; power !== 0n; n += 2n) {
    sum += power / n;
    power = (power * square) / ONE;
  }
  return 2n * sum;
}

const LN_2 = artanhTwice(ONE / 3n);

function exponential(value: bigint): bigint {
  let doublings = value / LN_2;
  if (value < 0n) doublings -= 1n;
  const rest = value - doublings * LN_2;
  let sum = 0n;
  for (let [term, n] = [ONE, 1n]; term !== 0n; n += 1n) {
    sum += term;
    term = (term * rest) / (ONE * n);
  }
  return doublings >= 0n ? sum * 2n ** doublings : sum / 2n ** -doublings;
}
