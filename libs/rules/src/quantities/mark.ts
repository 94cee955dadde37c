/**
 * The unit in which an event is measured. A mark is a whole number of units: `cm` = centimetre,
 * `qin` = quarter inch. Marks of different units are never compared.
 */
export type Unit = 'cm' | 'qin';

/** A mark, or a height of the bar, as it was measured: a whole number of units. */
export interface Mark {
  readonly unit: Unit;
  readonly value: number;
}

/** The greatest mark that can be written: 999.99 m and 999-11.75. The smallest is 1. */
export const MAX_MARK: Readonly<Record<Unit, number>> = { cm: 99_999, qin: 47_999 };

const METRES = /^(0|[1-9]\d{0,2})\.(\d\d)$/;
const FEET_INCHES = /^(0|[1-9]\d{0,2})-(0\d|1[01])\.(00|25|50|75)$/;

/**
 * Reads a mark as an official writes it: `52.98` is 5298 cm, `47-06.25` is 2281 quarter inches.
 * `null` when it is malformed; zero is, since nothing is thrown or jumped over no distance.
 */
export function parseMark(text: string): Mark | null {
  const metres = METRES.exec(text);
  if (metres) return positive('cm', Number(metres[1]) * 100 + Number(metres[2]));
  const imperial = FEET_INCHES.exec(text);
  if (!imperial) return null;
  const inches = Number(imperial[1]) * 12 + Number(imperial[2]);
  return positive('qin', inches * 4 + Number(imperial[3]) / 25);
}

function positive(unit: Unit, value: number): Mark | null {
  return value > 0 ? { unit, value } : null;
}

/**
 * Writes a mark: the inverse of `parseMark` for every mark that it reads.
 * @throws RangeError for what is not a whole, non-negative number of units (a mistake of the program).
 */
export function formatMark(value: number, unit: Unit): string {
  assertWhole(value);
  if (unit === 'cm') return `${Math.floor(value / 100)}.${twoDigits(value % 100)}`;
  const inches = Math.floor(value / 4);
  return `${Math.floor(inches / 12)}-${twoDigits(inches % 12)}.${twoDigits((value % 4) * 25)}`;
}

/** Whether a number of units is a mark that can be written. */
export function isMark(value: number, unit: Unit): boolean {
  return Number.isInteger(value) && value >= 1 && value <= MAX_MARK[unit];
}

/**
 * Which of two marks is better: negative when `a` is the lesser.
 * @throws RangeError when the units differ: a converted value never decides a place.
 */
export function compareMarks(a: Mark, b: Mark): number {
  if (a.unit !== b.unit)
    throw new RangeError(`A mark in ${a.unit} cannot be compared with one in ${b.unit}.`);
  return a.value - b.value;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}

function assertWhole(value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`A mark is a whole number of units, not ${value}.`);
  }
}
