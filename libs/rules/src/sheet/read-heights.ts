import { describe, LIST_NOT_EMPTY } from './kinds.js';
import type { ObjectReader } from './object-reader.js';
import { itemOf } from './place.js';
import { readMark } from './read-qualification.js';
import { belongs } from './read-terms.js';
import type { UnitWatch } from './unit-watch.js';

/** Reads the heights of the bar, strictly rising; `undefined` for those that cannot be read. */
export function readHeights(sheet: ObjectReader, units: UnitWatch): (number | undefined)[] | undefined {
  if (!belongs(sheet, 'heights')) return undefined;
  const list = sheet.required('heights', LIST_NOT_EMPTY);
  const parent = sheet.placeOf('heights');
  const marks = list?.map((item, index) => readMark(item, itemOf(parent, index), units, sheet.findings));
  marks?.forEach((mark, index) => {
    const before = marks[index - 1];
    if (!mark || mark.unit !== before?.unit || mark.value > before.value) return;
    const message = `The bar rises from height to height: write a greater one than ${describe(list?.[index - 1] ?? null)}.`;
    sheet.findings.report(itemOf(parent, index), 'NOT_RISING', message);
  });
  return marks?.map((mark) => mark?.value);
}
