import {
  compare,
  floor,
  fraction,
  multiply,
  parseDecimal,
  ZERO,
  type Fraction,
} from '../quantities/fraction.js';

/**
 * An age factor as it is published: a mark times the factor is the mark that it stands for. The library brings none:
 * the tables are published apart from the rules and change with them.
 */
export interface AgeFactor {
  readonly sex: 'M' | 'W';
  /** An age in years or a category, as the table has it. */
  readonly age: string;
  /** A decimal, e.g. `1.2345`; never a float. */
  readonly factor: string;
}

/** Factors for one event, with where they come from. */
export interface AgeFactorTable {
  readonly source: string;
  readonly factors: readonly AgeFactor[];
}

export interface AgeFactorProblem {
  /** Position in the table; `null`: of the table as a whole. */
  readonly index: number | null;
  readonly field: 'source' | 'age' | 'factor';
  readonly code: 'MISSING' | 'DUPLICATE' | 'FACTOR';
  readonly message: string;
}

/** Everything that keeps a table from being used. */
export function ageFactorProblems({ source, factors }: AgeFactorTable): AgeFactorProblem[] {
  const problems: AgeFactorProblem[] = [];
  if (source.trim() === '') {
    const message = 'A table of age factors names the publication and its year.';
    problems.push({ index: null, field: 'source', code: 'MISSING', message });
  }
  const seen = new Set<string>();
  for (const [index, { sex, age, factor }] of factors.entries()) {
    const line = `${sex} ${age}`;
    if (seen.has(line)) {
      problems.push({
        index,
        field: 'age',
        code: 'DUPLICATE',
        message: `${line} has two factors. Keep one.`,
      });
    }
    seen.add(line);
    if (factorOf(factor) === null) {
      const message = `A factor is a decimal above 0 and at most 20, e.g. 1.2345, not "${factor}".`;
      problems.push({ index, field: 'factor', code: 'FACTOR', message });
    }
  }
  return problems;
}

export interface GradedEntry {
  readonly key: string;
  readonly sex: 'M' | 'W';
  readonly age: string;
  /** Whole units of the competition; `null`: no mark. */
  readonly mark: number | null;
}

export interface GradedRow {
  readonly key: string;
  /** Mark times factor, down to a whole unit; `null`: no mark, or no factor. For display. */
  readonly graded: number | null;
  /** By the exact products; `null` without one. */
  readonly place: number | null;
  readonly equal: boolean;
}

/**
 * The list by age-graded marks that masters meets show beside the results of the categories. It decides no place in
 * them. Who has no mark or no factor comes last, in the order given.
 */
export function ageGradedList(entries: readonly GradedEntry[], table: AgeFactorTable): GradedRow[] {
  const factors = new Map(table.factors.map(({ sex, age, factor }) => [`${sex} ${age}`, factorOf(factor)]));
  const graded = entries.map(({ key, sex, age, mark }) => {
    const factor = factors.get(`${sex} ${age}`) ?? null;
    return { key, product: mark === null || factor === null ? null : multiply(fraction(mark), factor) };
  });
  const ranked = graded
    .filter(({ product }) => product !== null)
    .sort((a, b) => compare(b.product!, a.product!));
  const products = ranked.map(({ product }) => product!);
  return [
    ...ranked.map(({ key, product }): GradedRow => {
      const first = products.findIndex((one) => compare(one, product!) === 0);
      const last = products.findLastIndex((one) => compare(one, product!) === 0);
      return { key, graded: Number(floor(product!)), place: first + 1, equal: first !== last };
    }),
    ...graded
      .filter(({ product }) => product === null)
      .map(({ key }): GradedRow => ({ key, graded: null, place: null, equal: false })),
  ];
}

const MOST = fraction(20);

function factorOf(text: string): Fraction | null {
  const factor = parseDecimal(text);
  return factor && compare(factor, ZERO) > 0 && compare(factor, MOST) <= 0 ? factor : null;
}
