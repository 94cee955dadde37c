/** One page of a list that grows. Every edge carries the cursor after which the next page may begin. */
export interface Page<T> {
  readonly edges: readonly { readonly row: T; readonly cursor: string }[];
  readonly hasNextPage: boolean;
}

export interface PageRequest {
  /** 1 to 100. */
  readonly first: number;
  /** Cursor of the last edge that was read; `null` or absent: from the beginning. */
  readonly after?: string | null;
}

export const PAGE_LIMIT = 100;

/** A page was asked for that there cannot be. */
export class PageError extends Error {
  override readonly name = 'PageError';
  constructor(
    readonly field: 'first' | 'after',
    message: string,
  ) {
    super(message);
  }
}

export function checkedFirst(first: number): number {
  if (Number.isInteger(first) && first >= 1 && first <= PAGE_LIMIT) return first;
  throw new PageError(
    'first',
    `first must be a whole number from 1 to ${PAGE_LIMIT}; ask for fewer rows at a time.`,
  );
}

type Key = readonly (string | number)[];

export function makeCursor(key: Key): string {
  return Buffer.from(JSON.stringify(key)).toString('base64url');
}

/** The key in a cursor, when each part of it is what `shape` wants there. */
export function readCursor(cursor: string, shape: readonly ((text: string) => boolean)[]): Key {
  const key = parsed(cursor);
  const fits =
    Array.isArray(key) &&
    key.length === shape.length &&
    shape.every((isRight, part) => {
      const value: unknown = key[part];
      return (typeof value === 'string' || typeof value === 'number') && isRight(String(value));
    });
  if (!fits)
    throw new PageError(
      'after',
      'after is not a cursor of this list; take one from an edge of its last page.',
    );
  return key as Key;
}

function parsed(cursor: string): unknown {
  try {
    return JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8'));
  } catch {
    return null;
  }
}

/** Cuts `first + 1` rows down to a page. */
export function pageOf<T>(rows: readonly T[], first: number, keyOf: (row: T) => Key): Page<T> {
  return {
    edges: rows.slice(0, first).map((row) => ({ row, cursor: makeCursor(keyOf(row)) })),
    hasNextPage: rows.length > first,
  };
}

const UUID_FORM = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

export function isUuid(text: string): boolean {
  return UUID_FORM.test(text);
}

/** A day that there is, as `YYYY-MM-DD`. */
export function isDay(text: string): boolean {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(text) : Number.NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

/** What a column of names can hold. */
export function isName(text: string): boolean {
  return text.length <= 400 && !text.includes('\0');
}

export function isSequence(text: string): boolean {
  return /^\d{1,9}$/.test(text);
}
