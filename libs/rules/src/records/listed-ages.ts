import type { EventCode, RuleSetCode } from '../codes.js';
import { implementFor } from '../implements/implement-for.js';
import { isThrowEvent } from '../implements/throw-event.js';
import type { Performance } from './performance.js';

/** The category whose lists are open to everybody. */
export const OPEN_AGE = 'senior';

/** What decides in the lists of which age a mark stands. */
export interface AgeContext extends Pick<Performance, 'sex' | 'implementGrams' | 'onDate'> {
  readonly rules: RuleSetCode;
  readonly event: EventCode;
  /** The category in which it was made; `null`: the open one. */
  readonly age: string | null;
}

/**
 * The age categories in whose lists of club and meet a mark stands: the one in which it was made, and the open one if
 * nothing lighter was thrown than there (common practice of clubs, no published source).
 */
export function listedAges({ rules, event, sex, age, implementGrams, onDate }: AgeContext): string[] {
  if (age === null || age === OPEN_AGE) return [OPEN_AGE];
  if (!isThrowEvent(event)) return [age, OPEN_AGE];
  const open = sex === 'X' ? null : implementFor(rules, event, sex, OPEN_AGE, onDate);
  return open !== null && open.grams === implementGrams ? [age, OPEN_AGE] : [age];
}
