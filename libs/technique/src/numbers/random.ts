import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A source of chance that gives the same numbers for the same seed, everywhere. It remembers where it is. */
export interface Chance {
  /** A whole number from 0 to `count − 1`. */
  below(count: number): number;
  /** Between 0 and 1, both left out. */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

const TWO_TO_32 = 4_294_967_296;

/** Neighbouring seeds start alike; after so many steps they no longer do. */
const WARM_UP = 64;

export function chanceOf(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  for (let step = 0; step < WARM_UP; step++) generator.next();
  // The share of a count in 2³² that makes some numbers likelier is below one in a million for any count here.
  const below = (count: number): number => (((generator.next() >>> 0) / TWO_TO_32) * count) >>> 0;
  const uniform = (): number => ((generator.next() >>> 0) + 0.5) / TWO_TO_32;
  const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { below, uniform, normal };
}

/**
 * A seed from what names a question (athlete, event, version of the analysis, version of the data), so that a page
 * shows the same numbers twice: FNV-1a over the UTF-16 code units, 32 bits, parts kept apart.
 */
export function seedOf(...parts: readonly (string | number)[]): number {
  const text = parts.join('\u0000');
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) {
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  }
  return hash | 0;
}

/** Gamma with scale 1 (Marsaglia and Tsang 2000); below shape 1 by the boost U^(1/shape). */
export function gammaDraw(shape: number, chance: Chance): number {
  if (shape < 1) return gammaDraw(shape + 1, chance) * chance.uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = chance.normal();
    const v = (1 + c * z) ** 3;
    if (v > 0 && Math.log(chance.uniform()) < 0.5 * z * z + d - d * v + d * Math.log(v)) return d * v;
  }
}

export function betaDraw(a: number, b: number, chance: Chance): number {
  const x = gammaDraw(a, chance);
  return x / (x + gammaDraw(b, chance));
}
