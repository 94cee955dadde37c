import { parsePlacePoints } from '#rules';
import { textScalar } from '../platform/scalars/text-scalar.js';

export const PlacePoints = textScalar({
  name: 'PlacePoints',
  description:
    'What a place is worth: a plain decimal from 0 to 10000 with at most three decimals (`7.5`). Never a number: it does not pass through floating point.',
  expected: 'a decimal from 0 to 10000 with at most three decimals like 7.5',
  read: (text) => (text.length <= 20 && parsePlacePoints(text) ? text : null),
});
