import { mean, variance } from './moments.js';
import { betaDraw, chanceOf, gammaDraw, seedOf } from './random.js';

const DRAWS = 40_000;

function drawn(draw: () => number): number[] {
  return Array.from({ length: DRAWS }, draw);
}

describe('chance', () => {
  it('repeats itself for a seed, and differs for the next', () => {
    const [one, again, other] = [chanceOf(7), chanceOf(7), chanceOf(8)];
    const numbers = [one, again, other].map((chance) => Array.from({ length: 20 }, () => chance.uniform()));
    expect(numbers[0]).toEqual(numbers[1]);
    expect(numbers[0]).not.toEqual(numbers[2]);
  });

  it('is spread evenly', () => {
    const chance = chanceOf(1);
    const counts = new Array<number>(6).fill(0);
    drawn(() => chance.below(6)).forEach((face) => (counts[face] = (counts[face] ?? 0) + 1));
    const expected = DRAWS / 6;
    const chiSquare = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    // The 99.9 % point of chi-square with five degrees of freedom (tables).
    expect(chiSquare).toBeLessThan(20.515);
  });

  // Textbook moments; the bands are four standard errors of the mean.
  it.each([
    [
      'normal',
      0,
      1,
      () =>
        (
          (chance) => () =>
            chance.normal()
        )(chanceOf(2)),
    ],
    [
      'gamma of 0.5',
      0.5,
      0.5,
      () =>
        (
          (chance) => () =>
            gammaDraw(0.5, chance)
        )(chanceOf(3)),
    ],
    [
      'gamma of 14.5',
      14.5,
      14.5,
      () =>
        (
          (chance) => () =>
            gammaDraw(14.5, chance)
        )(chanceOf(4)),
    ],
    [
      'beta of 14.5 and 22.5',
      0.391892,
      0.006271,
      () =>
        (
          (chance) => () =>
            betaDraw(14.5, 22.5, chance)
        )(chanceOf(5)),
    ],
  ])('is %s where it should be', (_name, expected, spread, source) => {
    const values = drawn(source());
    expect(Math.abs(mean(values) - expected)).toBeLessThan(4 * Math.sqrt(spread / DRAWS));
    expect(Math.abs(variance(values) / spread - 1)).toBeLessThan(0.06);
  });
});

describe('a seed', () => {
  it('is the published FNV-1a value', () => {
    // Test vectors of the FNV page: "" and "a" and "foobar".
    expect(seedOf('') >>> 0).toBe(0x811c9dc5);
    expect(seedOf('a') >>> 0).toBe(0xe40c292c);
    expect(seedOf('foobar') >>> 0).toBe(0xbf9cf968);
  });

  it('keeps its parts apart', () => {
    expect(seedOf('ab', 'c')).not.toBe(seedOf('a', 'bc'));
  });
});
