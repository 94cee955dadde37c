import type { JsonValue } from './json.js';
import { JsonScanner, NotJson } from './json-scanner.js';

/** Why a text is not JSON, and where: `offset` in UTF-16 units from its start. */
export interface JsonFault {
  readonly offset: number;
  /** A sentence that names the line and column. */
  readonly message: string;
}

export type JsonReading =
  | { readonly ok: true; readonly value: JsonValue }
  | { readonly ok: false; readonly fault: JsonFault };

/** A list or an object whose end has not come yet. `key`: the one whose value comes next, in an object. */
type Open =
  | { readonly kind: 'list'; readonly items: JsonValue[] }
  | { readonly kind: 'object'; readonly members: Map<string, JsonValue>; key: string };

/**
 * Reads a JSON text (RFC 8259) in which no object has a key twice. What is open is kept in a list and not on the call
 * stack, so that no depth of nesting is too deep. A number beyond the range of a double becomes infinite, as with
 * `JSON.parse`.
 */
export function readJson(text: string): JsonReading {
  const scanner = new JsonScanner(text);
  try {
    const value = readDocument(scanner);
    scanner.expectEnd();
    return { ok: true, value };
  } catch (error) {
    if (!(error instanceof NotJson)) throw error;
    return { ok: false, fault: faultAt(text, error) };
  }
}

function readDocument(scanner: JsonScanner): JsonValue {
  const open: Open[] = [];
  for (;;) {
    const value = readStart(scanner, open);
    if (value === OPENED) continue;
    const whole = close(scanner, open, value);
    if (open.length === 0) return whole;
  }
}

/** A list or object with something in it has been opened: its first value comes next. */
const OPENED = Symbol('opened');

function readStart(scanner: JsonScanner, open: Open[]): JsonValue | typeof OPENED {
  if (scanner.take('[')) {
    if (scanner.take(']')) return [];
    open.push({ kind: 'list', items: [] });
    return OPENED;
  }
  if (scanner.take('{')) {
    if (scanner.take('}')) return new Map();
    open.push({ kind: 'object', members: new Map(), key: scanner.key() });
    return OPENED;
  }
  return scanner.scalar();
}

/** Puts a value where it belongs and ends all lists and objects that end behind it; the last value so ended. */
function close(scanner: JsonScanner, open: Open[], value: JsonValue): JsonValue {
  let whole = value;
  for (let parent = open.at(-1); parent; parent = open.at(-1)) {
    if (parent.kind === 'list') {
      parent.items.push(whole);
      if (scanner.commaOr(']')) return whole;
      whole = parent.items;
    } else {
      parent.members.set(parent.key, whole);
      if (scanner.commaOr('}')) {
        parent.key = nextKey(scanner, parent.members);
        return whole;
      }
      whole = parent.members;
    }
    open.pop();
  }
  return whole;
}

function nextKey(scanner: JsonScanner, members: ReadonlyMap<string, JsonValue>): string {
  const offset = scanner.nextOffset();
  const key = scanner.key();
  if (members.has(key)) {
    throw new NotJson(offset, `the key ${JSON.stringify(key)} stands twice in one object; keep one of them`);
  }
  return key;
}

function faultAt(text: string, { offset, complaint }: NotJson): JsonFault {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  const column = offset - before.lastIndexOf('\n');
  return { offset, message: `Line ${line}, column ${column}: ${complaint}.` };
}
