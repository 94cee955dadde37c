import { parseRaceTime } from '#rules';
import { textScalar } from './text-scalar.js';

export const RaceTimeText = textScalar({
  name: 'RaceTime',
  description:
    'The time of a race: seconds with two decimals (`10.39`), or one when it was taken by hand (`10.4`); minutes from 60 s on (`4:36.40`). Never a number: it does not pass through floating point.',
  expected: 'seconds with two decimals like 10.39, or one by hand, with minutes from 60 s on like 4:36.40',
  read: (text) => (parseRaceTime(text) ? text : null),
});
