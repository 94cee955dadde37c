import type { JsonList, JsonObject, JsonValue } from './json.js';

/** What a value must be. `expected` completes the sentence "… must be …". */
export interface Kind<T> {
  readonly expected: string;
  /** The value as one of this kind; `undefined`: it is not of this kind. */
  readonly read: (value: JsonValue) => T | undefined;
  /** When only some values of a type will do: whether the type is right at least. */
  readonly isType?: (value: JsonValue) => boolean;
}

export const TEXT: Kind<string> = {
  expected: 'a string',
  read: (value) => (typeof value === 'string' ? value : undefined),
};

export const TEXT_NOT_EMPTY: Kind<string> = {
  expected: 'a string that is not empty',
  read: (value) => (typeof value === 'string' && value !== '' ? value : undefined),
  isType: (value) => typeof value === 'string',
};

export const FLAG: Kind<boolean> = {
  expected: 'true or false',
  read: (value) => (typeof value === 'boolean' ? value : undefined),
};

export const WHOLE: Kind<number> = {
  expected: 'a whole number',
  read: (value) => (typeof value === 'number' && Number.isInteger(value) ? value : undefined),
};

export const LIST: Kind<JsonList> = {
  expected: 'a list',
  read: (value) => (Array.isArray(value) ? (value as JsonList) : undefined),
};

export const LIST_NOT_EMPTY: Kind<JsonList> = {
  expected: 'a list that is not empty',
  read: (value) => (Array.isArray(value) && value.length > 0 ? (value as JsonList) : undefined),
  isType: (value) => Array.isArray(value),
};

export const OBJECT: Kind<JsonObject> = {
  expected: 'an object',
  read: (value) => (value instanceof Map ? value : undefined),
};

/** A whole number from `least` on. */
export function wholeFrom(least: number): Kind<number> {
  return {
    expected: `a whole number from ${least} on`,
    read: (value) => {
      const number = WHOLE.read(value);
      return number !== undefined && number >= least ? number : undefined;
    },
    isType: (value) => WHOLE.read(value) !== undefined,
  };
}

/** One of some strings. */
export function oneOf<T extends string>(values: readonly T[]): Kind<T> {
  return {
    expected: listed(values.map((value) => JSON.stringify(value))),
    read: (value) => values.find((candidate) => candidate === value),
    isType: (value) => typeof value === 'string',
  };
}

function listed(words: readonly string[]): string {
  return words.length > 2 ? `one of ${words.join(', ')}` : words.join(' or ');
}

/** A kind, or `null`. */
export function orNull<T>(kind: Kind<T>): Kind<T | null> {
  return {
    expected: `${kind.expected} or null`,
    read: (value) => (value === null ? null : kind.read(value)),
    isType: (value) => value === null || isTypeOf(kind, value),
  };
}

export function isTypeOf(kind: Kind<unknown>, value: JsonValue): boolean {
  return kind.isType ? kind.isType(value) : kind.read(value) !== undefined;
}

/** What a value is, to tell somebody that it should be something else. */
export function describe(value: JsonValue): string {
  if (value === null) return 'null';
  if (typeof value === 'string') return shortened(JSON.stringify(value));
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : 'a number beyond all bounds';
  if (typeof value === 'boolean') return String(value);
  return Array.isArray(value) ? (value.length === 0 ? 'an empty list' : 'a list') : 'an object';
}

const SHOWN = 40;

function shortened(text: string): string {
  if (text.length <= SHOWN) return text;
  // Half a character at the end would be none.
  return `${text.slice(0, SHOWN).replace(/[\ud800-\udbff]$/, '')}…`;
}
