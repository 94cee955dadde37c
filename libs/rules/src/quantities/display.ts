import { formatMark, type Unit } from './mark.js';

const QUARTERS = ['', ' 1/4', ' 1/2', ' 3/4'] as const;

/**
 * A mark as people write it: `61.23`, `52-6 1/4`, `175-6`. For reading only: it is not what `parseMark` takes.
 * @throws RangeError as `formatMark` does.
 */
export function displayMark(value: number, unit: Unit): string {
  if (unit === 'cm') return formatMark(value, unit);
  const [feet, inches] = formatMark(value, unit).split(/[-.]/);
  return `${feet}-${Number(inches)}${QUARTERS[value % 4]}`;
}
