import fc from 'fast-check';
import { hashOf, isDrawSeed } from './draw-seed.js';
import { generatorOf } from './generator.js';
import { shuffled } from './shuffle.js';

// Vectors of the 64-bit FNV-1a: IETF draft-eastlake-fnv, appendix with test data.
describe('the hash of a seed', () => {
  it.each([
    ['', 0xcbf29ce484222325n],
    ['a', 0xaf63dc4c8601ec8cn],
    ['foobar', 0x85944171f73967e8n],
  ])('of "%s" is the published one', (text, hash) => {
    expect(hashOf(text)).toBe(hash);
  });

  it('is taken of what can be copied from paper', () => {
    expect(['x', 'Spring Meet, final', '~'.repeat(200)].every(isDrawSeed)).toBe(true);
    expect(['', '~'.repeat(201), 'Größe', 'two\nlines', 'tab\t', 'x\u007f'].some(isDrawSeed)).toBe(false);
  });
});

/**
 * The output that M. E. O'Neill publishes for the demonstration program of the C implementation (pcg-random.org, "Using
 * the minimal C implementation"): started with 42, stream 54, each round takes six numbers, 65 coins, 33 dice and a
 * pack of 52 cards, shuffled from the top down.
 */
describe('the generator against its publication', () => {
  const FACES = ['A', '2', '3', '4', '5', '6', '7', '8', '9', 'T', 'J', 'Q', 'K'];
  const SUITS = ['h', 'c', 'd', 's'];
  const below = generatorOf(42n, 54n);

  function roundOf(): { numbers: string[]; coins: string; rolls: string; cards: string } {
    const numbers = Array.from({ length: 6 }, () => below(2 ** 32).toString(16));
    const coins = Array.from({ length: 65 }, () => (below(2) === 1 ? 'H' : 'T')).join('');
    const rolls = Array.from({ length: 33 }, () => below(6) + 1).join(' ');
    const pack = shuffled([...Array(52).keys()], below);
    const cards = pack.map((card) => `${FACES[Math.floor(card / 4)]}${SUITS[card % 4]}`).join(' ');
    return { numbers, coins, rolls, cards };
  }

  it('gives the numbers, coins, dice and cards of rounds 1 and 5', () => {
    const first = roundOf();
    expect(first).toEqual({
      numbers: ['a15c02b7', '7b47f409', 'ba1d3330', '83d2f293', 'bfa4784b', 'cbed606e'],
      coins: 'HHTTTHTHHHTHTTTHHHHHTTTHHHTHTHTHTTHTTTHHHHHHTTTTHHTTTTTHTTTTTTTHT',
      rolls: '3 4 1 1 2 2 3 2 4 3 2 4 3 3 5 2 3 1 3 1 5 1 4 1 5 6 4 6 6 2 6 3 3',
      cards:
        'Qd Ks 6d 3s 3d 4c 3h Td Kc 5c Jh Kd Jd As 4s 4h Ad Th Ac Jc 7s Qs ' +
        '2s 7h Kh 2d 6c Ah 4d Qh 9h 6s 5s 2c 9c Ts 8d 9s 3c 8c Js 5d 2h 6h ' +
        '7d 8s 9d 5h 8h Qc 7c Tc',
    });
    const fifth = [roundOf(), roundOf(), roundOf(), roundOf()].at(-1);
    expect(fifth).toEqual({
      numbers: ['fcef7cd6', '1b488b5a', 'd0daf7ea', '1d9a70f7', '241a37cf', '9a3857b7'],
      coins: 'HHHHTHHTTHTTHHHTTTHHTHTHTTTTHTTHTHTTTHHHTHTHTTHTTHTHHTHTHHHTHTHTT',
      rolls: '5 4 1 2 6 1 3 1 5 6 3 6 2 1 4 4 5 2 1 5 6 5 6 4 4 4 5 2 6 4 3 5 6',
      cards:
        '4d 9s Qc 9h As Qs 7s 4c Kd 6h 6s 2c 8c 5d 7h 5h Jc 3s 7c Jh Js Ks ' +
        'Tc Jd Kc Th 3h Ts Qh Ad Td 3c Ah 2d 3d 5c Ac 8s 5s 9c 2h 6c 6d Kh ' +
        'Qd 8d 7d 2s 8h 4h 9d 4s',
    });
  });
});

describe('a number below a bound', () => {
  it('is one', () => {
    const bound = fc.oneof(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 2 ** 32 }));
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 2n ** 64n - 1n }), bound, (start, limit) => {
        const number = generatorOf(start, 0n)(limit);
        return Number.isSafeInteger(number) && number >= 0 && number < limit;
      }),
      { numRuns: 20_000 },
    );
  });
});

describe('a shuffle', () => {
  it('keeps every item once and its input as it was', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(), { maxLength: 30 }),
        fc.bigInt({ min: 0n, max: 2n ** 64n - 1n }),
        (items, start) => {
          const before = [...items];
          const order = shuffled(items, generatorOf(start, 0n));
          expect(items).toEqual(before);
          expect(order.toSorted((a, b) => a - b)).toEqual(before.toSorted((a, b) => a - b));
        },
      ),
      { numRuns: 20_000 },
    );
  });

  it('gives each of the 24 orders of four about as often, from seeds that hardly differ', () => {
    const seeds = 24_000;
    const counts = new Map<string, number>();
    for (let n = 0; n < seeds; n++) {
      const order = shuffled(['A', 'B', 'C', 'D'], generatorOf(hashOf(`Club meet, discus ${n}`), 0n)).join(
        '',
      );
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    const expected = seeds / 24;
    const deviation = [...counts.values()].reduce(
      (sum, count) => sum + (count - expected) ** 2 / expected,
      0,
    );
    expect(counts.size).toBe(24);
    // Chi-square with 23 degrees of freedom: 49.7 is passed once in a thousand (NIST/SEMATECH e-Handbook, 1.3.6.7.4).
    expect(deviation).toBeLessThan(49.728);
  });
});
