import type { MixedData, RandomTerm } from './mixed-model.js';

/** Sums of products over the rows; they do not change while the model is fitted. Z has a column per group and term. */
export interface CrossProducts {
  readonly zz: readonly (readonly number[])[];
  /** By column of X. */
  readonly zx: readonly (readonly number[])[];
  readonly zy: readonly number[];
  readonly xx: readonly (readonly number[])[];
  readonly xy: readonly number[];
  readonly yy: number;
}

export function crossProducts({ y, fixed, random }: MixedData): CrossProducts {
  const z = randomRows(random, y.length);
  const width = z[0]?.length ?? 0;
  const columns = fixed[0]?.length ?? 0;
  const overRows = (of: (row: number) => number): number => y.reduce((total, _, row) => total + of(row), 0);
  const at = (rows: readonly (readonly number[])[], row: number, column: number): number =>
    rows[row]?.[column] ?? 0;
  const square = (size: number, of: (i: number, j: number) => number): number[][] =>
    Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, j) => of(i, j)));
  return {
    zz: squareOfSparse(z, width),
    zx: Array.from({ length: columns }, (_, c) =>
      Array.from({ length: width }, (__, k) => overRows((row) => at(z, row, k) * at(fixed, row, c))),
    ),
    zy: Array.from({ length: width }, (_, k) => overRows((row) => at(z, row, k) * (y[row] ?? 0))),
    xx: square(columns, (i, j) => overRows((row) => at(fixed, row, i) * at(fixed, row, j))),
    xy: Array.from({ length: columns }, (_, c) => overRows((row) => at(fixed, row, c) * (y[row] ?? 0))),
    yy: overRows((row) => (y[row] ?? 0) ** 2),
  };
}

/** Each row of Z is nearly empty: only the columns of its own groups count. */
function squareOfSparse(z: readonly (readonly number[])[], width: number): number[][] {
  const square = Array.from({ length: width }, () => new Array<number>(width).fill(0));
  for (const row of z) {
    const filled = row.flatMap((value, k) => (value === 0 ? [] : [k]));
    for (const i of filled) {
      const line = square[i] as number[];
      for (const j of filled) line[j] = (line[j] as number) + (row[i] as number) * (row[j] as number);
    }
  }
  return square;
}

/** Rows of Z: term by term, group by group, column by column. */
function randomRows(random: readonly RandomTerm[], rows: number): number[][] {
  const z = Array.from({ length: rows }, () => [] as number[]);
  for (const { groups, columns } of random) {
    const names = [...new Set(groups)];
    z.forEach((line, row) => {
      const own = columns[row] ?? [];
      for (const name of names) line.push(...own.map((value) => (groups[row] === name ? value : 0)));
    });
  }
  return z;
}

/** The lower triangle of a term from its place in θ. */
export function relativeFactor(theta: readonly number[], from: number, size: number): number[][] {
  let next = from;
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (__, column) => (column <= row ? (theta[next++] ?? 0) : 0)),
  );
}

/** Λᵀ Z′Z Λ, Λᵀ Z′X and Λᵀ Z′y, with Λ the factors of the terms along its diagonal. */
export function scaled(
  theta: readonly number[],
  random: readonly RandomTerm[],
  { zz, zx, zy }: CrossProducts,
): Pick<CrossProducts, 'zz' | 'zx' | 'zy'> {
  const turn = turning(theta, random);
  const half = zz.map((row) => turn(row));
  const turned = turn.columns(half);
  return { zz: turned, zx: zx.map((column) => turn(column)), zy: turn(zy) };
}

interface Turn {
  (vector: readonly number[]): number[];
  columns(rows: readonly (readonly number[])[]): number[][];
}

/** v ↦ Λᵀ v, block by block. */
function turning(theta: readonly number[], random: readonly RandomTerm[]): Turn {
  const blocks: { readonly at: number; readonly factor: number[][] }[] = [];
  let [place, at] = [0, 0];
  for (const { groups, columns } of random) {
    const size = columns[0]?.length ?? 0;
    const factor = relativeFactor(theta, place, size);
    place += (size * (size + 1)) / 2;
    for (let group = 0; group < new Set(groups).size; group++, at += size) blocks.push({ at, factor });
  }
  const turn = (vector: readonly number[]): number[] => {
    const turned = new Array<number>(vector.length).fill(0);
    for (const { at: from, factor } of blocks) {
      factor.forEach((row, i) =>
        row.forEach((value, j) => {
          turned[from + j] = (turned[from + j] ?? 0) + value * (vector[from + i] ?? 0);
        }),
      );
    }
    return turned;
  };
  const transposed = (rows: readonly (readonly number[])[]): number[][] =>
    rows.map((_, i) => rows.map((row) => row[i] ?? 0));
  return Object.assign(turn, {
    columns: (rows: readonly (readonly number[])[]) => transposed(rows).map(turn),
  });
}
