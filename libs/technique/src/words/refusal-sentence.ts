import type { Counted, Refusal, RefusalCode } from '../answer.js';

const WHY: Readonly<Record<RefusalCode, string>> = {
  STAGE_NOT_REACHED: 'This point is not taught yet.',
  MIXED_IMPLEMENT: 'Marks with different implements are not put together.',
  NOT_ASSESSED: 'Nobody has looked at this point yet.',
  NOTICED_ONLY: 'Only what caught the eye was noted, so nothing is known of the other throws.',
  SCOPE_COVERAGE: 'Too few throws of these series were looked at for this point.',
  NO_MARK: 'There is no mark yet.',
  LT_THROWS: 'There are too few throws.',
  LT_FREEDOM: 'There are too few throws within the same series.',
  LT_SERIES: 'There are too few series.',
  LT_COMPETITIONS: 'There are too few competitions.',
  LT_PAIRS: 'Too few competitions have practice throws with the same implement in the two weeks before.',
  LT_INFORMATIVE_SERIES: 'Too few series have throws with this point and throws without it.',
  LT_PER_STATE: 'There are too few throws with this point, or too few without it.',
  LT_DOUBLE_LOGGED: 'Too few throws were looked at by both.',
  LT_ATHLETES: 'Too few athletes have an answer of their own.',
  K_TOO_SMALL: 'The throws could have fallen in too few other ways for chance to be told apart.',
  OBSERVER_UNRELIABLE:
    'Two observers of the same throws agree too little on this point. Agree first on what it looks like.',
  OUTSIDE_THE_DATA: 'This mark lies outside what the data can tell.',
  NOT_ESTIMABLE: 'The throws that there are leave nothing to compare.',
};

const COUNTED: ReadonlySet<Counted> = new Set(['throws', 'series', 'competitions', 'pairs', 'athletes']);

/** Why there is no answer yet, what there is, and about how many throws are missing. */
export function refusalSentence({ code, have, need, of, missingThrows }: Refusal): string {
  const counts = COUNTED.has(of) && need > have ? ` There are ${have}; ${need} are needed.` : '';
  return WHY[code] + counts + missingSentence(code, missingThrows);
}

function missingSentence(code: RefusalCode, missingThrows: number | null): string {
  if (missingThrows === null || missingThrows <= 0) return '';
  const throws = missingThrows === 1 ? 'one more throw is' : `${missingThrows} more throws are`;
  return code === 'SCOPE_COVERAGE' || code === 'LT_DOUBLE_LOGGED'
    ? ` About ${throws} to be looked at.`
    : ` About ${throws} missing.`;
}
