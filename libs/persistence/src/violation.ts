/** What the database would not store, as a value that a caller can answer with. */
export interface Violation {
  /**
   * `unique`: already there; `reference`: names something that is not there, or is still named by something;
   * `check`: breaks an invariant; `data`: a value that the column's type cannot hold.
   */
  readonly kind: 'unique' | 'reference' | 'check' | 'data';
  /** Name of the constraint, as in the migrations; `null` for `data`. */
  readonly constraint: string | null;
}

const KINDS: Readonly<Record<string, Violation['kind']>> = {
  '23505': 'unique',
  '23503': 'reference',
  '23001': 'reference',
  '23514': 'check',
  '23502': 'check',
};

/** The violation behind an error that a store threw; `null`: something else went wrong. */
export function violationOf(error: unknown): Violation | null {
  const code = fieldOf(error, 'code');
  if (code === null) return null;
  const kind = KINDS[code] ?? (code.startsWith('22') ? 'data' : null);
  if (kind === null) return null;
  return { kind, constraint: fieldOf(error, 'constraint') };
}

/** The SQLSTATE of an error from the database, or `null`. */
export function sqlStateOf(error: unknown): string | null {
  return fieldOf(error, 'code');
}

function fieldOf(error: unknown, field: string): string | null {
  if (typeof error !== 'object' || error === null) return null;
  const source = 'driverError' in error && typeof error.driverError === 'object' ? error.driverError : error;
  const value = (source as Record<string, unknown> | null)?.[field];
  return typeof value === 'string' ? value : null;
}
