import { refusalSentence, type Answer, type Interval, type Refusal } from '#technique';

/** Why there is no number, in words and in figures. */
export interface Refused {
  readonly code: string;
  readonly have: number;
  readonly need: number;
  readonly of: string;
  readonly missingThrows: number | null;
  readonly sentence: string;
}

/** What every answer has: a reason instead of a number, or the ids of the attempts behind the number. */
export interface Grounds {
  readonly refused: Refused | null;
  readonly attempts: readonly string[];
}

export function refusedOf(refusal: Refusal): Refused {
  const { code, have, need, of, missingThrows } = refusal;
  return { code, have, need, of, missingThrows, sentence: refusalSentence(refusal) };
}

/** An answer of the library as one flat object: its numbers, or nulls and the reason. */
export function flat<T, N extends object, E extends object>(
  answer: Answer<T>,
  attempts: readonly string[],
  empty: E,
  numbers: (of: T) => N,
): (N | E) & Grounds {
  return answer.kind === 'refused'
    ? { ...empty, refused: refusedOf(answer), attempts }
    : { ...numbers(answer), refused: null, attempts };
}

/** Numbers that JSON cannot say are no numbers: an interval without an end is given as null. */
export function intervalOf(interval: Interval | null): OpenInterval | null {
  if (interval === null) return null;
  const end = (value: number): number | null => (Number.isFinite(value) ? value : null);
  return { low: end(interval.low), high: end(interval.high), level: interval.level };
}

export interface OpenInterval {
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number;
}
