import { parseMark } from '#rules';
import { textScalar } from './text-scalar.js';

export const MarkText = textScalar({
  name: 'Mark',
  description:
    'A mark as an official writes it: metres with two decimals (`61.10`) or feet, inches and quarters (`47-06.25`). Never a number: it does not pass through floating point.',
  expected: 'metres with two decimals like 61.10, or feet and inches like 47-06.25, greater than zero',
  read: (text) => (parseMark(text) ? text : null),
});
