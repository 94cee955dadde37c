/**
 * Why an entry can never be right, in order of precedence: of two faults the one named first is reported, so the
 * same entry always gets the same answer. `refusal-texts.ts` has the sentence and the remedy of each.
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
  'LAST_ROUND_ORDER',
  'CUT_NOT_IN_PLAN',
  'HEIGHT_OUT_OF_RANGE',
  'HEIGHT_NOT_LEFT_OUT',
  'TRIAL_OUT_OF_RANGE',
  'UPRIGHTS_NOT_OF_EVENT',
  'UPRIGHTS_OUT_OF_RANGE',
  'MARK_MISSING',
  'MARK_NOT_EXPECTED',
  'MARK_OUT_OF_RANGE',
  'WIND_NOT_MEASURED',
  'WIND_NOT_EXPECTED',
  'WIND_OUT_OF_RANGE',
  'FOUL_NOT_OF_EVENT',
  'INCIDENT_NOT_OF_OUTCOME',
  'PROTEST_NOT_EXPECTED',
  'NO_JUMP_OFF',
  'JUMP_OFF_ROUND_OPEN',
  'CHECKS_MISSING',
  'WAIT_NOT_OVER',
  'ROUND_CLASH',
  'TRIAL_CLASH',
  'HAS_TRIALS',
  'NAMED_TWICE',
  'BIB_TAKEN',
  'FLIGHT_UNKNOWN',
  'UNMATCHED',
  'OPEN_QUESTIONS',
  'NOT_COMPLETE',
  'ALREADY_SO',
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

/**
 * Why an entry that may well have happened is kept outside the places: until a referee rules, or until what is
 * missing comes in (an earlier trial, a start, an admission, a reinstatement, the bar). `hold-texts.ts` has the
 * sentence and the remedy of each.
 */
export const HOLD_CODES = [
  'SIGNED_OFF',
  'NOT_STARTED',
  'DISQUALIFIED',
  'AFTER_RETIRING',
  'AFTER_STANDARD',
  'NOT_THROUGH',
  'ROUND_TAKEN',
  'DURING_INTERRUPTION',
  'EARLIER_ROUND_OPEN',
  'LAST_ROUND_REORDERED',
  'WRONG_IMPLEMENT',
  'IMPLEMENT_NOT_PASSED',
  'CHANGES_A_CUT',
  'AWAITS_REFEREE',
  'AFTER_THREE_FAILURES',
  'HEIGHT_CLEARED',
  'HEIGHT_PASSED',
  'FOURTH_TRIAL',
  'TRIAL_TAKEN',
  'EARLIER_TRIAL_OPEN',
  'EARLIER_HEIGHT_OPEN',
  'NOT_A_HEIGHT',
  'ABOVE_THE_BAR',
  'BAR_NOT_RISING',
  'BAR_STEP_TOO_SMALL',
  'BAR_STEP_GROWS',
  'BAR_STEP_NOT_UNIFORM',
  'NOT_IN_JUMP_OFF',
  'OUT_OF_JUMP_OFF',
  'JUMP_OFF_DECLINED',
  'ANOTHER_JUMP_OFF_HEIGHT',
] as const;
export type HoldCode = (typeof HOLD_CODES)[number];

/**
 * Holds that only a ruling ends. The others end by themselves when what is missing comes in, and a ruling can only
 * dismiss them.
 */
export const RULED_HOLDS: ReadonlySet<HoldCode> = new Set([
  'SIGNED_OFF',
  'ROUND_TAKEN',
  'DURING_INTERRUPTION',
  'LAST_ROUND_REORDERED',
  'WRONG_IMPLEMENT',
  'IMPLEMENT_NOT_PASSED',
  'CHANGES_A_CUT',
  'AWAITS_REFEREE',
  'TRIAL_TAKEN',
  'BAR_NOT_RISING',
  'BAR_STEP_TOO_SMALL',
  'BAR_STEP_GROWS',
  'BAR_STEP_NOT_UNIFORM',
]);

/** What is worth saying about an accepted entry. */
export const NOTICE_CODES = [
  'OUT_OF_TURN',
  'FINER_THAN_MEASURED',
  'FAR_OUTSIDE',
  'IMPLEMENT_IN_QUESTION',
  'TRIALS_OUTSTANDING',
  'NOT_ANNOUNCED',
  'NOT_THE_RULE_HEIGHT',
  'UPRIGHTS_OUTSIDE_RULE',
] as const;
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

/** `cutChanges` is empty where there are no cuts. */
export type Verdict =
  | { readonly standing: 'accepted'; readonly notices: readonly NoticeCode[] }
  | {
      readonly standing: 'held';
      readonly hold: Objection<HoldCode>;
      readonly cutChanges: readonly CutChange[];
    }
  | { readonly standing: 'refused'; readonly refusal: Objection<RefusalCode> };
