/** Whole numbers as if by chance: from 0 to `bound` - 1, each as likely as the other. */
export type NumberBelow = (bound: number) => number;

const MULTIPLIER = 6364136223846793005n;
const TWO_TO_32 = 2 ** 32;

/**
 * The generator PCG32 (XSH-RR, 64-bit state, 32-bit output) of M. E. O'Neill, "PCG: A Family of Simple Fast
 * Space-Efficient Statistically Good Algorithms for Random Number Generation", Harvey Mudd College, HMC-CS-2014-0905.
 *
 * Start: state = 0; one step; state += `start` (modulo 2^64); one step. Step: state = state × 6364136223846793005 +
 * increment (modulo 2^64), where increment = 2 × `stream` + 1. Each number comes from the state before its step: the
 * low 32 bits of ((state >> 18) xor state) >> 27, rotated right by the top 5 bits of the state.
 *
 * A number below a bound is the remainder of the first 32-bit number that is not below 2^32 mod bound.
 */
export function generatorOf(start: bigint, stream: bigint): NumberBelow {
  const increment = BigInt.asUintN(64, 2n * stream + 1n);
  const stepped = (from: bigint): bigint => BigInt.asUintN(64, from * MULTIPLIER + increment);
  let state = stepped(BigInt.asUintN(64, stepped(0n) + start));
  const next = (): number => {
    const number = outputOf(state);
    state = stepped(state);
    return number;
  };
  return (bound) => {
    const least = TWO_TO_32 % bound;
    for (;;) {
      const number = next();
      if (number >= least) return number % bound;
    }
  };
}

function outputOf(state: bigint): number {
  const bits = Number(BigInt.asUintN(32, ((state >> 18n) ^ state) >> 27n));
  const rotation = Number(state >> 59n);
  return ((bits >>> rotation) | (bits << (-rotation & 31))) >>> 0;
}
