/** An interval with the share of cases in which such intervals hold the truth: 0.9 or 0.95. */
export interface Interval {
  readonly low: number;
  readonly high: number;
  readonly level: number;
}

/** Why a question has no answer yet. A refusal is a normal result: it says what is missing, not that something broke. */
export const REFUSAL_CODES = [
  'STAGE_NOT_REACHED',
  'MIXED_IMPLEMENT',
  'NOT_ASSESSED',
  'NOTICED_ONLY',
  'SCOPE_COVERAGE',
  'NO_MARK',
  'LT_THROWS',
  'LT_FREEDOM',
  'LT_SERIES',
  'LT_COMPETITIONS',
  'LT_PAIRS',
  'LT_INFORMATIVE_SERIES',
  'LT_PER_STATE',
  'LT_DOUBLE_LOGGED',
  'LT_ATHLETES',
  'K_TOO_SMALL',
  'OBSERVER_UNRELIABLE',
  'OUTSIDE_THE_DATA',
  'NOT_ESTIMABLE',
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

/** What a refusal counts. */
export type Counted =
  | 'throws'
  | 'series'
  | 'competitions'
  | 'pairs'
  | 'athletes'
  | 'arrangements'
  | 'degrees of freedom'
  | 'implements'
  | 'stages'
  | 'centimetres'
  | 'hundredths of kappa';

export interface Refusal {
  readonly kind: 'refused';
  readonly code: RefusalCode;
  readonly have: number;
  readonly need: number;
  readonly of: Counted;
  /**
   * About how many more throws it takes, as far as throws can help: series are turned into throws by the size of those
   * there are. `null` where throwing more is no remedy.
   */
  readonly missingThrows: number | null;
}

/** A given answer carries `kind: 'answer'`, so that one `if` tells it from a refusal. */
export type Answer<T> = (T & { readonly kind: 'answer' }) | Refusal;

export function refused(
  code: RefusalCode,
  of: Counted,
  have: number,
  need: number,
  missingThrows: number | null = null,
): Refusal {
  return { kind: 'refused', code, of, have, need, missingThrows };
}

/** The same where what is counted are throws. */
export function throwsMissing(code: RefusalCode, have: number, need: number): Refusal {
  return refused(code, 'throws', have, need, Math.max(0, need - have));
}

/** Where series are counted: `perSeries` throws stand for one, six where there is none yet. */
export function seriesMissing(code: RefusalCode, have: number, need: number, perSeries = 6): Refusal {
  const each = Number.isFinite(perSeries) && perSeries > 0 ? perSeries : 6;
  return refused(
    code,
    code === 'LT_COMPETITIONS' ? 'competitions' : 'series',
    have,
    need,
    Math.ceil((need - have) * each),
  );
}

export function isRefused<T>(answer: Answer<T>): answer is Refusal {
  return answer.kind === 'refused';
}
