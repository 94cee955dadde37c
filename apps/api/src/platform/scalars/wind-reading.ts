import { parseWind } from '#rules';
import { textScalar } from './text-scalar.js';

export const WindText = textScalar({
  name: 'WindReading',
  description:
    'Wind in metres a second with its sign and one decimal (`+1.3`, `-0.4`, `+0.0`), or `NWI`: not measured.',
  expected: 'a sign, whole metres a second and one decimal like +1.3, or NWI',
  read: (text) => (parseWind(text) === null ? null : text),
});
