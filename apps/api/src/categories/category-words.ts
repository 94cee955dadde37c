import type { AgeDay } from '#rules';
import { enumOf } from '../platform/inputs/enums.js';

export const AgeDayKindEnum = enumOf<AgeDay['kind']>(
  'AgeDayKind',
  ['end of year', 'day of competition', 'next', 'no age'],
  'On which day an age counts: the last of the year, that of the competition, the next one with a month and day, or the age does not matter.',
);
