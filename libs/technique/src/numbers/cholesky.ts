/** Rows of a matrix. */
export type Matrix = readonly (readonly number[])[];

/** A pivot that keeps less than this of its diagonal is rounding: the columns depend on each other. */
const SMALLEST_SHARE = 1e-11;

/** The lower factor L of a symmetric matrix A = L Lᵀ; `null` when A is not positive definite. */
export function choleskyOf(a: Matrix): number[][] | null {
  const size = a.length;
  const lower = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let row = 0; row < size; row++) {
    const own = lower[row] as number[];
    for (let column = 0; column <= row; column++) {
      const other = lower[column] as number[];
      let rest = a[row]?.[column] ?? 0;
      for (let k = 0; k < column; k++) rest -= (own[k] as number) * (other[k] as number);
      if (column < row) own[column] = rest / (other[column] as number);
      else if (rest > SMALLEST_SHARE * (a[row]?.[row] ?? 0)) own[row] = Math.sqrt(rest);
      else return null;
    }
  }
  return lower;
}

/** x with L x = b. */
export function solveLower(lower: Matrix, b: readonly number[]): number[] {
  const x: number[] = [];
  lower.forEach((row, at) => {
    let rest = b[at] ?? 0;
    for (let k = 0; k < at; k++) rest -= (row[k] as number) * (x[k] as number);
    x.push(rest / (row[at] as number));
  });
  return x;
}

/** x with Lᵀ x = b. */
export function solveUpper(lower: Matrix, b: readonly number[]): number[] {
  const size = lower.length;
  const x = new Array<number>(size).fill(0);
  for (let at = size - 1; at >= 0; at--) {
    let rest = b[at] ?? 0;
    for (let k = at + 1; k < size; k++) rest -= (lower[k]?.[at] ?? 0) * (x[k] as number);
    x[at] = rest / (lower[at]?.[at] as number);
  }
  return x;
}

/** ln |A| of A = L Lᵀ. */
export function logDeterminant(lower: Matrix): number {
  return 2 * lower.reduce((total, row, at) => total + Math.log(row[at] as number), 0);
}

export function dot(a: readonly number[], b: readonly number[]): number {
  let total = 0;
  for (let at = 0; at < a.length; at++) total += (a[at] as number) * (b[at] as number);
  return total;
}
