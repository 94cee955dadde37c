/**
 * A value of a JSON text. An object is a `Map`, so that its keys stand in the order of the text (a plain object
 * moves keys like `"7"` to the front) and none of them (`__proto__`) means anything to the program.
 */
export type JsonValue = null | boolean | number | string | JsonList | JsonObject;
export type JsonList = readonly JsonValue[];
export type JsonObject = ReadonlyMap<string, JsonValue>;

/** A JSON value as `JSON.parse` gives it and `JSON.stringify` takes it. */
export type PlainJson = null | boolean | number | string | readonly PlainJson[] | PlainObject;
export interface PlainObject {
  readonly [key: string]: PlainJson;
}

/** A plain object with exactly these keys, `__proto__` like any other. */
export function plainObject(entries: Iterable<readonly [string, PlainJson]>): PlainObject {
  const object = Object.create(null) as Record<string, PlainJson>;
  for (const [key, value] of entries) object[key] = value;
  return object;
}
