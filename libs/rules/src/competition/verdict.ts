/**
 * Why an entry can never be right, in order of precedence: of two faults the one named first is reported, so the
 * same entry always gets the same answer. Each has a rule and a remedy in `refusals.ts`.
 */
export const REFUSAL_CODES = [
  'ID_REUSED',
  'UNKNOWN_COMPETITOR',
  'UNKNOWN_ENTRY',
  'WRONG_KIND_OF_ENTRY',
  'NOT_ALLOWED',
  'REASON_MISSING',
  'ROUND_NOT_IN_PLAN',
  'CUT_NOT_IN_PLAN',
  'MARK_MISSING',
  'MARK_NOT_EXPECTED',
  'MARK_OUT_OF_RANGE',
  'WIND_NOT_MEASURED',
  'WIND_OUT_OF_RANGE',
  'FOUL_NOT_OF_EVENT',
  'MOVE_CLASH',
  'ORDER_INCOMPLETE',
  'ALREADY_SO',
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

/**
 * Why an entry that may well have happened is kept outside the places until a referee rules (or until what is
 * missing comes in).
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

/** What is worth saying about an accepted entry. */
export const NOTICE_CODES = ['OUT_OF_TURN', 'FINER_THAN_MEASURED', 'FAR_OUTSIDE', 'IMPLEMENT_NOT_NOTED'] as const;
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

export type Verdict =
  | { readonly standing: 'accepted'; readonly notices: readonly NoticeCode[] }
  | { readonly standing: 'held'; readonly hold: Objection<HoldCode> }
  | { readonly standing: 'refused'; readonly refusal: Objection<RefusalCode> };
