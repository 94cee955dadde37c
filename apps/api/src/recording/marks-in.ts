import { formatMark, parseMark, type Unit } from '#rules';
import { Unreadable } from './entry-request.js';

const UNIT_NAMES = { cm: 'metres with two decimals', qin: 'feet-inches' } as const;
const UNIT_EXAMPLES = { cm: formatMark(5810, 'cm'), qin: formatMark(9151, 'qin') } as const;

/** Of a field that may be left out. */
export function optionalMarkIn(
  unit: Unit,
  field: readonly string[],
  text: string | null | undefined,
): number | null | Unreadable {
  return typeof text === 'string' ? markIn(unit, field, text) : null;
}

/**
 * The mark or height in whole units of a competition. It is measured in one unit; a mark of the other is a mark of
 * another event's tape.
 */
export function markIn(unit: Unit, field: readonly string[], text: string): number | Unreadable {
  const mark = parseMark(text);
  // The scalar has read it, so that only the unit can be another one.
  if (mark?.unit === unit) return mark.value;
  return new Unreadable({
    code: 'MARK_UNIT',
    message: `This competition is measured in ${UNIT_NAMES[unit]}.`,
    path: field,
    remedy: `Send it as it was measured, like "${UNIT_EXAMPLES[unit]}"; it is never converted.`,
  });
}
