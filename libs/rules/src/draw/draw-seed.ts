/** 1 to 200 printable ASCII characters, so that it is the same bytes on paper, on a screen and in any program. */
const DRAW_SEED = /^[\x20-\x7e]{1,200}$/;

/** Whether a text can be the published seed of a draw. */
export function isDrawSeed(text: string): boolean {
  return DRAW_SEED.test(text);
}

const OFFSET_BASIS = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

/**
 * The 64-bit FNV-1a hash of an ASCII text (G. Fowler, L. C. Noll, K.-P. Vo; IETF draft-eastlake-fnv): starting with the
 * offset basis, for each byte: exclusive-or the byte, multiply by the prime, keep 64 bits.
 */
export function hashOf(text: string): bigint {
  let hash = OFFSET_BASIS;
  for (let at = 0; at < text.length; at++) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(text.charCodeAt(at))) * PRIME);
  }
  return hash;
}
