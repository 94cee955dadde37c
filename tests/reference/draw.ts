import fc, { type GeneratorValue } from 'fast-check';

/** Where the generators take their chances from. Every draw is a whole number, so that fast-check can shrink it. */
export interface Draw {
  /** 0 up to, not including, `count`. */
  below(count: number): number;
  /** True in so many of a hundred; shrinks to false. */
  chance(percent: number): boolean;
  pick<T>(list: readonly T[]): T;
}

function drawFrom(generator: GeneratorValue): Draw {
  const below = (count: number) => (count <= 1 ? 0 : generator(integerBelow, count));
  return {
    below,
    chance: (percent) => below(100) >= 100 - percent,
    pick: <T>(list: readonly T[]) => {
      if (list.length === 0) throw new Error('nothing to pick from');
      return list[below(list.length)] as T;
    },
  };
}

/** Without bias to the ends: the chances of the generators are meant as they are written. */
function integerBelow(count: number): fc.Arbitrary<number> {
  return fc.noBias(fc.nat({ max: count - 1 }));
}

/** An arbitrary of whatever a generator makes of its draws. */
export function drawn<T>(generate: (draw: Draw) => T): fc.Arbitrary<T> {
  return fc.gen().map((generator) => generate(drawFrom(generator)));
}
