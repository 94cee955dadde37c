import type { Findings } from './findings.js';
import type { JsonObject, JsonValue } from './json.js';
import { describe, isTypeOf, OBJECT, type Kind } from './kinds.js';
import type { Place } from './place.js';

/**
 * Reads the keys of one object of a sheet and reports what is wrong with them. Everywhere `undefined` means that
 * a problem has been reported.
 */
export class ObjectReader {
  private readonly indexOf: ReadonlyMap<string, number>;

  private constructor(
    private readonly object: JsonObject,
    readonly place: Place,
    private readonly keys: readonly string[] | null,
    readonly findings: Findings,
  ) {
    this.indexOf = new Map([...object.keys()].map((key, index) => [key, index]));
    for (const key of object.keys()) {
      if (keys && !keys.includes(key)) this.reportUnknown(key, keys);
    }
  }

  /** `keys`: all that the object may have, in the order in which the format lists them; `null`: not known. */
  static open(
    value: JsonValue,
    place: Place,
    keys: readonly string[] | null,
    findings: Findings,
  ): ObjectReader | undefined {
    const object = readValue(value, place, OBJECT, findings);
    return object && new ObjectReader(object, place, keys, findings);
  }

  has(key: string): boolean {
    return this.object.has(key);
  }

  placeOf(key: string): Place {
    const index = this.indexOf.get(key) ?? this.indexOfMissing(key);
    return { parent: this.place, step: key, index };
  }

  /** What is missing is told before what is there, in the order in which the format lists the keys. */
  private indexOfMissing(key: string): number {
    return this.keys ? this.keys.indexOf(key) - this.keys.length : -1;
  }

  required<T>(key: string, kind: Kind<T>): T | undefined {
    const value = this.object.get(key);
    if (value !== undefined) return readValue(value, this.placeOf(key), kind, this.findings);
    this.reportMissing(key, kind.expected);
    return undefined;
  }

  optional<T, A>(key: string, kind: Kind<T>, whenAbsent: A): T | A | undefined {
    return this.has(key) ? this.required(key, kind) : whenAbsent;
  }

  reportMissing(key: string, expected: string): void {
    this.findings.report(this.placeOf(key), 'MISSING', `Give ${JSON.stringify(key)}: ${expected}.`);
  }

  /** The object has the key, but this kind of competition does not. */
  reportOutOfPlace(key: string, because: string): void {
    this.findings.report(this.placeOf(key), 'OUT_OF_PLACE', `Take ${JSON.stringify(key)} out: ${because}.`);
  }

  private reportUnknown(key: string, known: readonly string[]): void {
    const message = `There is no key ${describe(key)} here; take it out or write one of ${known.join(', ')}.`;
    this.findings.report(this.placeOf(key), 'UNKNOWN_KEY', message);
  }
}

/** A value of some kind; `undefined`: a problem has been reported. */
export function readValue<T>(
  value: JsonValue,
  place: Place,
  kind: Kind<T>,
  findings: Findings,
): T | undefined {
  const read = kind.read(value);
  if (read !== undefined) return read;
  const code = isTypeOf(kind, value) ? 'UNKNOWN_VALUE' : 'WRONG_TYPE';
  findings.report(place, code, `This must be ${kind.expected}, not ${describe(value)}.`);
  return undefined;
}
