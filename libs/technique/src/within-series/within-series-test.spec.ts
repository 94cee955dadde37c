import fc from 'fast-check';
import { chanceOf } from '../numbers/random.js';
import { arrangementsOf } from './arrangements.js';
import type { Block } from './block.js';
import { withinSeriesTest, type WithinSeriesTest } from './within-series-test.js';

const TWO_SERIES: readonly Block[] = [
  { x: [1, 0, 0, 1, 1, 0], y: [36.1, 38.0, 37.4, 36.9, 35.8, 38.6] },
  { x: [0, 1, 0, 1, 0], y: [39.2, 38.1, 38.9, 38.6, 40.0] },
];

function tested(blocks: readonly Block[], level = 0.9, draws = 2000, seed = 1): WithinSeriesTest {
  const found = withinSeriesTest(blocks, { level, draws, chance: chanceOf(seed) });
  if (found === null) throw new Error('x differs within no series');
  return found;
}

describe('the test within series', () => {
  // Computed independently with Python: all 200 arrangements; the interval on a grid of 0.001.
  it('of two series, in metres', () => {
    const { beta, p, pOneSided, arrangements, exact, interval } = tested(TWO_SERIES, 0.95);
    expect(beta).toBeCloseTo(-1.4148148148, 9);
    expect({ arrangements, exact }).toEqual({ arrangements: 200, exact: true });
    expect(p).toBeCloseTo(0.01, 12);
    expect(pOneSided).toBeCloseTo(0.005, 12);
    expect([interval.low, interval.high].map((end) => end.toFixed(3))).toEqual(['-2.200', '-0.600']);
    const ninety = tested(TWO_SERIES, 0.9).interval;
    expect([ninety.low, ninety.high].map((end) => end.toFixed(3))).toEqual(['-2.050', '-0.767']);
  });

  it('says nothing when nothing differs', () => {
    const options = { level: 0.9, draws: 100, chance: chanceOf(1) };
    expect(withinSeriesTest([{ x: [1, 1], y: [3, 4] }], options)).toBeNull();
    expect(withinSeriesTest([], options)).toBeNull();
  });

  it('has no end to its interval when there are too few arrangements', () => {
    const { interval, p } = tested([{ x: [1, 0, 0], y: [1, 3, 3.2] }]);
    expect(interval).toMatchObject({ low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY });
    expect(p).toBeCloseTo(1 / 3, 12);
  });
});

/** Every different order of the values, the slow way. */
function orders(values: readonly number[]): number[][] {
  if (values.length === 0) return [[]];
  return [...new Set(values)].flatMap((first) => {
    const at = values.indexOf(first);
    const others = [...values.slice(0, at), ...values.slice(at + 1)];
    return orders(others).map((rest) => [first, ...rest]);
  });
}

function slopeOf(xs: readonly (readonly number[])[], ys: readonly (readonly number[])[]): number {
  let [top, bottom] = [0, 0];
  xs.forEach((x, block) => {
    const y = ys[block] ?? [];
    const [middleX, middleY] = [x, y].map((v) => v.reduce((a, b) => a + b, 0) / v.length) as [number, number];
    x.forEach((value, at) => {
      top += (value - middleX) * ((y[at] ?? 0) - middleY);
      bottom += (value - middleX) ** 2;
    });
  });
  return top / bottom;
}

/** p of a supposed effect, by laying out every series in every way and counting. */
function countedP(blocks: readonly Block[], supposed: number): number {
  const ys = blocks.map(({ x, y }) => y.map((value, at) => value - supposed * (x[at] ?? 0)));
  const observed = Math.abs(
    slopeOf(
      blocks.map(({ x }) => x),
      ys,
    ),
  );
  const every = blocks.map(({ x }) => orders(x));
  const all = every.reduce<number[][][]>(
    (sets, next) => sets.flatMap((set) => next.map((x) => [...set, x])),
    [[]],
  );
  return all.filter((xs) => Math.abs(slopeOf(xs, ys)) >= observed - 1e-9).length / all.length;
}

const anyBlock = fc.array(fc.tuple(fc.constantFrom(0, 1, 2), fc.integer({ min: 300, max: 400 })), {
  minLength: 3,
  maxLength: 5,
});
const anyBlocks = fc
  .array(anyBlock, { minLength: 1, maxLength: 2 })
  .map((blocks) => blocks.map((rows): Block => ({ x: rows.map(([x]) => x), y: rows.map(([, y]) => y / 10) })))
  .filter((blocks) => blocks.some(({ x }) => x.some((value) => value !== x[0])));

describe('the interval found in one pass', () => {
  it('holds exactly what counting does not reject', () => {
    fc.assert(
      fc.property(
        anyBlocks,
        fc.constantFrom(0.8, 0.9),
        fc.double({ min: -12, max: 12, noNaN: true }),
        (blocks, level, at) => {
          const { interval, beta, p } = tested(blocks, level);
          expect(p).toBeCloseTo(countedP(blocks, 0), 9);
          // Away from the ends, where rounding would decide.
          const supposed = beta + at;
          fc.pre(Math.abs(supposed - interval.low) > 1e-6 && Math.abs(supposed - interval.high) > 1e-6);
          const held = supposed > interval.low && supposed < interval.high;
          expect(held).toBe(countedP(blocks, supposed) > 1 - level + 1e-9);
        },
      ),
      { numRuns: 150, seed: 11 },
    );
  });

  it('does not see what is the same for a whole series', () => {
    fc.assert(
      fc.property(anyBlocks, fc.integer({ min: -50, max: 50 }), (blocks, by) => {
        const moved = blocks.map(({ x, y }, block) => ({ x, y: y.map((value) => value + by * (block + 1)) }));
        const [before, after] = [tested(blocks), tested(moved)];
        expect(after.beta).toBeCloseTo(before.beta, 8);
        expect(after.p).toBeCloseTo(before.p, 9);
      }),
      { numRuns: 60, seed: 12 },
    );
  });
});

describe('drawn arrangements', () => {
  const long: Block = {
    x: Array.from({ length: 16 }, (_, at) => (at % 3 === 0 ? 1 : 0)),
    y: Array.from({ length: 16 }, (_, at) => 40 + ((at * 7) % 5) - (at % 3 === 0 ? 1 : 0)),
  };

  it('come close to all of them, looked up or shuffled', () => {
    const exact = tested([long]);
    expect({ exact: exact.exact, count: arrangementsOf(long.x) }).toEqual({ exact: true, count: 8008 });
    // With the same series three times over there are too many to list; each is shuffled, for it has over 2,000.
    const drawn = [1, 2, 3].map((seed) => tested([long, long, long], 0.9, 20_000, seed));
    for (const one of drawn) {
      expect(one).toMatchObject({ exact: false, draws: 20_000, beta: expect.closeTo(exact.beta, 9) });
      expect(Math.abs(one.p - (drawn[0]?.p ?? 0))).toBeLessThan(0.01);
      expect(one.interval.low).toBeCloseTo(drawn[0]?.interval.low ?? 0, 1);
    }
  });

  it('agree with counting where both can be had', () => {
    const short: Block = { x: [1, 0, 0, 1, 0, 0, 1], y: [3.1, 3.9, 4.4, 3.6, 4.1, 3.7, 3.0] };
    const counted = tested([short, short, short]);
    const many = tested(
      [short, short, short, { x: [1, 0, 0, 0, 0, 0, 0], y: [4, 4, 4, 4, 4, 4, 4] }],
      0.9,
      40_000,
    );
    expect(counted.exact).toBe(true);
    expect(many.exact).toBe(false);
    expect(many.p).toBeLessThan(0.01);
    expect(counted.p).toBeLessThan(0.01);
  });

  it('are the same for the same seed', () => {
    expect(tested([long, long], 0.9, 500, 5)).toEqual(tested([long, long], 0.9, 500, 5));
  });
});

describe('a covariate', () => {
  it('takes out what goes with the round', () => {
    // y rises by 1 with the round and x is noted early: without the round x seems to cost, with it, it does not.
    const early: Block = { x: [1, 1, 0, 1, 0, 0], y: [1, 2, 3, 4, 5, 6], z: [1, 2, 3, 4, 5, 6] };
    const late: Block = { x: [1, 0, 1, 0, 0, 0], y: [11, 12, 13, 14, 15, 16], z: [1, 2, 3, 4, 5, 6] };
    const bare = [early, late].map(({ x, y }) => ({ x, y }));
    expect(tested(bare).beta).toBeLessThan(-1);
    expect(tested([early, late]).beta).toBeCloseTo(0, 9);
  });

  it('changes nothing when it is the same for all', () => {
    const flat = TWO_SERIES.map(({ x, y }) => ({ x, y, z: x.map(() => 3) }));
    expect(tested(flat)).toEqual(tested(TWO_SERIES));
  });
});
