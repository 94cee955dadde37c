/**
 * Why an entry can never be right, in order of precedence: of two faults the one named first is reported, so the
 * same entry always gets the same answer. `objections.ts` has the rule and the remedy of each.
 */
export const REFUSAL_CODES = [
  'ID_REUSED',
  'NOT_ALLOWED',
  'RESULT_OFFICIAL',
  'UNKNOWN_COMPETITOR',
  'UNKNOWN_ENTRY',
  'WRONG_KIND_OF_ENTRY',
  'NOT_IN_FORCE',
  'NO_QUESTION',
  'NOT_BY_RULING',
  'REASON_MISSING',
  'ROUND_NOT_IN_PLAN',
  'CUT_NOT_IN_PLAN',
  'MARK_MISSING',
  'MARK_NOT_EXPECTED',
  'MARK_OUT_OF_RANGE',
  'WIND_NOT_MEASURED',
  'WIND_NOT_EXPECTED',
  'WIND_OUT_OF_RANGE',
  'FOUL_NOT_OF_EVENT',
  'ROUND_CLASH',
  'HAS_TRIALS',
  'NAMED_TWICE',
  'OPEN_QUESTIONS',
  'NOT_COMPLETE',
  'ALREADY_SO',
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

/**
 * Why an entry that may well have happened is kept outside the places: until a referee rules, or until what is
 * missing comes in (an earlier round, a start, an admission, a reinstatement).
 */
export const HOLD_CODES = [
  'SIGNED_OFF',
  'NOT_STARTED',
  'DISQUALIFIED',
  'AFTER_RETIRING',
  'AFTER_STANDARD',
  'NOT_THROUGH',
  'ROUND_TAKEN',
  'EARLIER_ROUND_OPEN',
  'WRONG_IMPLEMENT',
  'CHANGES_A_CUT',
  'AWAITS_REFEREE',
] as const;
export type HoldCode = (typeof HOLD_CODES)[number];

/**
 * Holds that only a ruling ends. The others end by themselves when what is missing comes in, and a ruling can only
 * dismiss them.
 */
export const RULED_HOLDS: ReadonlySet<HoldCode> = new Set([
  'SIGNED_OFF',
  'ROUND_TAKEN',
  'WRONG_IMPLEMENT',
  'CHANGES_A_CUT',
  'AWAITS_REFEREE',
]);

/** What is worth saying about an accepted entry. */
export const NOTICE_CODES = ['OUT_OF_TURN', 'FINER_THAN_MEASURED', 'FAR_OUTSIDE'] as const;
export type NoticeCode = (typeof NOTICE_CODES)[number];

/** Something refused or held: code, sentence, the rule behind it, what to do now. */
export interface Objection<C extends string> {
  readonly code: C;
  /** The part of the entry that is at fault, e.g. `wind`; `null` = the entry as a whole. */
  readonly field: string | null;
  readonly message: string;
  readonly rule: string | null;
  readonly remedy: string;
}

/** What a held entry would do to a cut already made, by competitor key. */
export interface CutChange {
  readonly after: number;
  readonly wouldBeIn: readonly string[];
  readonly wouldBeOut: readonly string[];
}

export type Verdict =
  | { readonly standing: 'accepted'; readonly notices: readonly NoticeCode[] }
  | {
      readonly standing: 'held';
      readonly hold: Objection<HoldCode>;
      readonly cutChanges: readonly CutChange[];
    }
  | { readonly standing: 'refused'; readonly refusal: Objection<RefusalCode> };
