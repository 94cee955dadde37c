/**
 * What is known of the wind of one trial: whole tenths of m/s (never negative zero), `NWI` when it was not
 * measured, `pending` when a reading is still expected. `null` beside it: the event has no wind, or none was given.
 */
export type Wind = number | 'NWI' | 'pending';

/** The strongest wind that can be written, either way: 99.9 m/s. */
export const MAX_WIND_TENTHS = 999;

const METRES_PER_SECOND = /^([+-])(\d{1,2})\.(\d)$/;

/**
 * Reads a wind as it is written: `+1.3` is 13, `-0.4` is -4, `NWI` stays. `null` when it is malformed; `-0.0` is,
 * since it would be a second way to write still air.
 */
export function parseWind(text: string): number | 'NWI' | null {
  if (text === 'NWI') return 'NWI';
  const parts = METRES_PER_SECOND.exec(text);
  if (!parts) return null;
  const tenths = Number(parts[2]) * 10 + Number(parts[3]);
  if (parts[1] === '+') return tenths;
  return tenths === 0 ? null : -tenths;
}

/**
 * Writes a wind: the inverse of `parseWind`. Still air is `+0.0`.
 * @throws RangeError for what is not a whole number of tenths (a mistake of the program).
 */
export function formatWind(wind: number | 'NWI'): string {
  if (wind === 'NWI') return wind;
  if (!Number.isSafeInteger(wind)) throw new RangeError(`A wind is a whole number of tenths, not ${wind}.`);
  const tenths = Math.abs(wind);
  return `${wind < 0 ? '-' : '+'}${Math.floor(tenths / 10)}.${tenths % 10}`;
}

/**
 * The wind as recorded from a reading in hundredths of m/s: up to the next tenth, toward the tail wind, whenever the
 * second decimal is not zero. +2.03 becomes +2.1 and -2.03 becomes -2.0. (World Athletics TR17.10, from memory.)
 */
export function roundWindUp(hundredths: number): number {
  if (!Number.isSafeInteger(hundredths)) {
    throw new RangeError(`A reading is a whole number of hundredths, not ${hundredths}.`);
  }
  // Adding zero turns the negative zero of, say, -0.05 into still air.
  return Math.ceil(hundredths / 10) + 0;
}

/** Whether a wind lets a mark count as wind-legal: at most the limit; `null` when the wind is not known. */
export function isWindLegal(wind: Wind, limitTenths: number): boolean | null {
  return typeof wind === 'number' ? wind <= limitTenths : null;
}
