import { mean } from '../numbers/moments.js';

/** One series: what was noted of each throw (0/1, or a severity), what came of it, and perhaps a covariate. */
export interface Block {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** What is taken out of both within the series: the round. Either all blocks have it or none. */
  readonly z?: readonly number[];
}

/** A block with its means taken off. `x` is kept as it is: moved around, it still meets centred columns. */
export interface CentredBlock {
  readonly x: readonly number[];
  readonly dx: readonly number[];
  readonly dy: readonly number[];
  readonly dz: readonly number[] | null;
}

/** Sums of products over all blocks. */
export interface Products {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  readonly zz: number;
  readonly zx: number;
  readonly zy: number;
}

export function centre({ x, y, z }: Block): CentredBlock {
  const off = (values: readonly number[]): readonly number[] => {
    const middle = mean(values);
    return values.map((value) => value - middle);
  };
  return { x, dx: off(x), dy: off(y), dz: z ? off(z) : null };
}

/** Whether a block can say anything: x differs within it. */
export function isInformative({ x }: Pick<Block, 'x'>): boolean {
  return x.some((value) => value !== x[0]);
}

export function productsOf(blocks: readonly CentredBlock[]): Products {
  const over = (of: (block: CentredBlock, at: number) => number): number =>
    blocks.reduce((total, block) => total + block.x.reduce((sum, _, at) => sum + of(block, at), 0), 0);
  const at = (values: readonly number[] | null, place: number): number => values?.[place] ?? 0;
  return {
    xx: over((block, i) => at(block.dx, i) ** 2),
    xy: over((block, i) => at(block.dx, i) * at(block.dy, i)),
    yy: over((block, i) => at(block.dy, i) ** 2),
    zz: over((block, i) => at(block.dz, i) ** 2),
    zx: over((block, i) => at(block.dz, i) * at(block.dx, i)),
    zy: over((block, i) => at(block.dz, i) * at(block.dy, i)),
  };
}

/** What is left of the products once z is taken out of x and y. */
export function withoutCovariate({ xx, xy, yy, zz, zx, zy }: Products): Pick<Products, 'xx' | 'xy' | 'yy'> {
  if (zz === 0) return { xx, xy, yy };
  return { xx: xx - zx ** 2 / zz, xy: xy - (zx * zy) / zz, yy: yy - zy ** 2 / zz };
}
