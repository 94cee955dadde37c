import { combinedPoints, type CombinedEventCode, type ScoringSex } from '#rules';
import { FORMULAS, formulaUnit, type Formula } from '../../libs/rules/src/combined/scoring-table.js';

/** About the world's best in centimetres (values from memory; they only set how far the count goes). */
const WORLD_BEST: Readonly<Record<ScoringSex, Readonly<Record<string, number>>>> = {
  M: {
    'high-jump': 245,
    'pole-vault': 630,
    'long-jump': 895,
    shot: 2356,
    discus: 7556,
    hammer: 8674,
    javelin: 9848,
    weight: 2641,
  },
  W: {
    'high-jump': 210,
    'pole-vault': 506,
    'long-jump': 752,
    shot: 2263,
    discus: 7680,
    hammer: 8298,
    javelin: 7228,
    weight: 2602,
  },
};

const ALL = (Object.keys(FORMULAS) as ScoringSex[]).flatMap((sex) =>
  (Object.entries(FORMULAS[sex]) as [CombinedEventCode, Formula][]).map(([event, formula]) => ({
    sex,
    event,
    formula,
  })),
);

/** Every performance to be counted in whole hundredths, the worst first. */
function performances(sex: ScoringSex, event: CombinedEventCode, { b }: Formula): number[] {
  if (formulaUnit(event) === 'seconds') {
    const zero = Math.round(Number(b) * 100);
    return Array.from({ length: zero }, (_, at) => zero - at);
  }
  const end = Math.ceil(WORLD_BEST[sex][event]! * 1.3);
  return Array.from({ length: end + 1 }, (_, cm) => cm);
}

/** The whole number that a decimal is in units of 10^-places. */
function scaled(decimal: string, places: number): bigint {
  const [whole = '', decimals = ''] = decimal.split('.');
  return BigInt(whole + decimals.padEnd(places, '0'));
}

/**
 * The exact reference, with whole numbers of any size (BigInt) and no floating point: from the least x at which n
 * points are reached, found by doubling and halving, x is worth n until the least x for n + 1. With a = A/10^d,
 * c = p/q and x in hundredths: A^q·x^p ≥ n^q·10^(d·q)·100^p.
 */
function thresholds({ a, c }: Formula, until: bigint): bigint[] {
  const decimals = (a.split('.')[1] ?? '').length;
  const common = commonFactor(scaled(c, 3), 1000n);
  const [p, q] = [scaled(c, 3) / common, 1000n / common];
  const left = scaled(a, decimals) ** q;
  const right = 10n ** (BigInt(decimals) * q) * 100n ** p;
  const least: bigint[] = [0n];
  for (let n = 1n; ; n += 1n) {
    const limit = n ** q * right;
    const reached = (x: bigint): boolean => left * x ** p >= limit;
    // Where one hundredth is worth more than one point, the x before may do for this one as well.
    let [high, step] = [least.at(-1)!, 1n];
    let low = high - 1n;
    while (!reached(high)) {
      if (high > until) return least;
      [low, high, step] = [high, high + step, step * 2n];
    }
    while (high - low > 1n) {
      const middle = (low + high) / 2n;
      if (reached(middle)) high = middle;
      else low = middle;
    }
    if (high > until) return least;
    least.push(high);
  }
}

function commonFactor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : commonFactor(b, a % b);
}

/** By how many hundredths of the unit of the formula a performance is better than b. */
function beyond(event: CombinedEventCode, { b }: Formula, hundredths: number): bigint {
  const base = scaled(b, 2);
  if (formulaUnit(event) === 'seconds') return base - BigInt(hundredths);
  return BigInt(hundredths) * (formulaUnit(event) === 'centimetres' ? 100n : 1n) - base;
}

/** Where the library and the reference differ, from the worst performance to the best; and the most points there are. */
function comparison(
  { sex, event, formula }: (typeof ALL)[number],
  timing: 'electronic' | 'hand',
): { readonly differing: string[]; readonly most: number } {
  const added = timing === 'hand' ? addedByHand(event) : 0;
  const all = performances(sex, event, formula);
  const least = thresholds(formula, beyond(event, formula, all.at(-1)!));
  const differing: string[] = [];
  let expected = 0;
  for (const hundredths of all) {
    const x = beyond(event, formula, hundredths + added);
    while (least[expected + 1] !== undefined && least[expected + 1]! <= x) expected += 1;
    const counted = combinedPoints(sex, event, hundredths, timing);
    if (counted !== expected) differing.push(`${hundredths}: ${counted}, not ${expected}`);
  }
  return { differing, most: expected };
}

/** From memory: 0.24 s up to 200 m and over hurdles, 0.14 s over 400 m. */
function addedByHand(event: CombinedEventCode): number {
  return event === '400m' ? 14 : /^(60m|100m|200m|\d+mh)$/.test(event) ? 24 : 0;
}

/*
 * Every centimetre from 0 to 1.3 times the world's best, every hundredth from 0.01 s to the time that is worth nothing;
 * of both sexes, in every event that has a formula.
 */
describe('points of every performance, to the point', () => {
  it('are of every column of the tables', () => {
    expect(ALL.map(({ sex, event }) => `${sex} ${event}`).sort()).toEqual(
      [
        ...['60m', '100m', '200m', '400m', '1000m', '1500m', '60mh', '110mh'].map((event) => `M ${event}`),
        ...['60m', '100m', '200m', '400m', '800m', '1000m', '1500m', '60mh', '100mh'].map(
          (event) => `W ${event}`,
        ),
        ...(['M', 'W'] as const).flatMap((sex) =>
          Object.keys(WORLD_BEST[sex]).map((event) => `${sex} ${event}`),
        ),
      ].sort(),
    );
  });

  it.each(ALL)('$sex $event', (column) => {
    const { differing, most } = comparison(column, 'electronic');
    expect(differing).toEqual([]);
    expect(most).toBeGreaterThan(1000);
  });

  // To the hundredth, though a watch is read in tenths: a sheet may have two decimals.
  const timed = ALL.filter(({ event }) => formulaUnit(event) === 'seconds');
  it.each(timed)('$sex $event, timed by hand', (column) => {
    const { differing, most } = comparison(column, 'hand');
    expect(differing).toEqual([]);
    expect(most).toBeGreaterThan(1000);
  });
});
