import { choleskyOf, dot, logDeterminant, solveLower, solveUpper } from './cholesky.js';
import { minimise } from './minimise.js';
import { crossProducts, relativeFactor, scaled, type CrossProducts } from './mixed-model-products.js';

/** Values that differ by group: one column `[1]` for a level per group, `[1, day]` for a level and a slope. */
export interface RandomTerm {
  /** The group of each row. */
  readonly groups: readonly string[];
  /** The columns of each row. Several columns of one term are correlated; for none, give a term each. */
  readonly columns: readonly (readonly number[])[];
}

export interface MixedData {
  readonly y: readonly number[];
  /** Rows of the fixed part, the 1 of the intercept written out. */
  readonly fixed: readonly (readonly number[])[];
  readonly random: readonly RandomTerm[];
}

export interface MixedFit {
  readonly fixed: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residualSd: number;
  /** By term, the standard deviation of each column over groups. */
  readonly randomSds: readonly (readonly number[])[];
  /** −2 log L; for REML the restricted one. */
  readonly deviance: number;
}

/**
 * A linear mixed model by maximum likelihood (ML) or restricted maximum likelihood (REML): penalised least squares,
 * profiled over the relative covariance factors (Bates et al., Journal of Statistical Software 67, 2015, section 3).
 * Dense, for some hundred rows and groups. `null` when the fixed columns depend on each other.
 */
export function fitMixed(data: MixedData, method: 'REML' | 'ML'): MixedFit | null {
  const products = crossProducts(data);
  const start = data.random.flatMap(({ columns }) => startOf(columns[0]?.length ?? 0));
  if (!solvedAt(start, data, products, method)) return null;
  const found = minimise(
    (theta) => solvedAt(theta, data, products, method)?.deviance ?? Number.POSITIVE_INFINITY,
    start,
  );
  const solved = solvedAt(found.at, data, products, method);
  if (solved === null) return null;
  return { ...solved, randomSds: randomSdsOf(found.at, data, solved.residualSd) };
}

/** The identity, as the lower triangle row by row. */
function startOf(columns: number): number[] {
  const triangle: number[] = [];
  for (let row = 0; row < columns; row++) {
    for (let column = 0; column <= row; column++) triangle.push(row === column ? 1 : 0);
  }
  return triangle;
}

type Solved = Omit<MixedFit, 'randomSds'>;

function solvedAt(
  theta: readonly number[],
  data: MixedData,
  products: CrossProducts,
  method: 'REML' | 'ML',
): Solved | null {
  const { zz, zx, zy } = scaled(theta, data.random, products);
  const inner = choleskyOf(zz.map((row, at) => row.map((value, k) => (k === at ? value + 1 : value))));
  if (inner === null) return null;
  const cu = solveLower(inner, zy);
  const rzx = zx.map((column) => solveLower(inner, column));
  const outer = choleskyOf(
    products.xx.map((row, i) => row.map((v, j) => v - dot(rzx[i] as number[], rzx[j] as number[]))),
  );
  if (outer === null) return null;
  const cb = solveLower(
    outer,
    products.xy.map((value, at) => value - dot(rzx[at] as number[], cu)),
  );
  const residual = products.yy - dot(cu, cu) - dot(cb, cb);
  const freedom = data.y.length - (method === 'REML' ? outer.length : 0);
  const variance = residual / freedom;
  const restricted = method === 'REML' ? logDeterminant(outer) : 0;
  const deviance = logDeterminant(inner) + restricted + freedom * (1 + Math.log(2 * Math.PI * variance));
  return {
    fixed: solveUpper(outer, cb),
    standardErrors: outer.map((_, at) => Math.sqrt(variance) * unitNorm(outer, at)),
    residualSd: Math.sqrt(variance),
    deviance,
  };
}

/** √ of the diagonal of (L Lᵀ)⁻¹. */
function unitNorm(lower: readonly (readonly number[])[], at: number): number {
  const unit = lower.map((_, k) => (k === at ? 1 : 0));
  const column = solveLower(lower, unit);
  return Math.sqrt(dot(column, column));
}

function randomSdsOf(
  theta: readonly number[],
  { random }: MixedData,
  residualSd: number,
): readonly (readonly number[])[] {
  let from = 0;
  return random.map(({ columns }) => {
    const size = columns[0]?.length ?? 0;
    const factor = relativeFactor(theta, from, size);
    from += (size * (size + 1)) / 2;
    return factor.map((row) => residualSd * Math.sqrt(dot(row, row)));
  });
}
