import { type Fraction, floor, fraction, parseDecimal } from './fraction.js';
import type { Unit } from './mark.js';

/** What a tape or an instrument showed, exactly: any number of decimals, in units of the event. */
export interface Reading {
  readonly unit: Unit;
  readonly exact: Fraction;
}

const FEET_INCHES = /^(\d{1,3})-(\d{1,2}(?:\.\d+)?)$/;
const METRES = /^\d{1,3}\.\d+$/;

/**
 * Reads what an instrument showed: `61.2371` (metres) or `175-06.4` (feet-inches), `null` if it is neither.
 * It is finer than a mark; `measureDown` makes a mark of it.
 */
export function parseReading(text: string): Reading | null {
  if (METRES.test(text)) {
    const metres = parseDecimal(text);
    return metres && { unit: 'cm', exact: fraction(metres.numerator * 100n, metres.denominator) };
  }
  const parts = FEET_INCHES.exec(text);
  const inches = parts && parseDecimal(parts[2] ?? '');
  if (!inches || floor(inches) >= 12n) return null;
  const quarterInches = inches.numerator * 4n + BigInt(parts[1] ?? '') * 48n * inches.denominator;
  return { unit: 'qin', exact: fraction(quarterInches, inches.denominator) };
}

/**
 * The mark recorded from an exact distance in units: the step of the event below it, when the distance is not a
 * whole number of steps. (World Athletics TR32.20 and TR30.5 for the centimetre, numbers from memory; the step of an
 * event is the `precision` of its rule set.)
 */
export function measureDown(exact: Fraction, step: number): number {
  const units = Number(floor(exact));
  return units - (units % step);
}

/** The mark in centimetres recorded from a distance in whole millimetres. */
export function measureDownMillimetres(millimetres: number): number {
  return measureDown(fraction(millimetres, 10), 1);
}

/** Whether a mark is as coarse as its event demands: a whole number of steps. */
export function isOnStep(value: number, step: number): boolean {
  return value % step === 0;
}
