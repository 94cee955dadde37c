/**
 * What can be wrong with a file, in order of precedence: of two problems of one place the one named first is told.
 * `UNREADABLE` is for whoever fetches the file.
 */
export const PROBLEM_CODES = [
  'UNREADABLE',
  'NOT_JSON',
  'TOO_LARGE',
  'MISSING',
  'WRONG_TYPE',
  'UNKNOWN_KEY',
  'UNKNOWN_VALUE',
  'OUT_OF_PLACE',
  'DUPLICATE',
  'UNKNOWN_BIB',
  'CELL',
  'UNIT',
  'WIND_NOT_MEASURED',
  'TOO_MANY',
  'GAP',
  'AFTER_RETIRING',
  'AFTER_DNS',
  'AFTER_CUT',
  'AFTER_STANDARD',
  'AFTER_THREE_FAILURES',
  'OPEN_HEIGHT',
  'NOT_RISING',
  'PLAN',
  'JUMP_OFF',
  'SCORING',
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];
