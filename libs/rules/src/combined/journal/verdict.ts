import type { Objection } from '../../journal/verdict.js';

/** Why an entry can never be right, in order of precedence: of two faults the one named first is reported. */
export const COMBINED_REFUSAL_CODES = [
  'ID_REUSED',
  'NOT_ALLOWED',
  'RESULT_OFFICIAL',
  'UNKNOWN_ENTRANT',
  'UNKNOWN_EVENT',
  'COMPONENT_LINKED',
  'UNKNOWN_ENTRY',
  'WRONG_KIND_OF_ENTRY',
  'NOT_IN_FORCE',
  'NO_QUESTION',
  'NOT_BY_RULING',
  'REASON_MISSING',
  'OUTCOME_NOT_OF_EVENT',
  'MARK_MISSING',
  'MARK_NOT_EXPECTED',
  'MARK_OUT_OF_RANGE',
  'WIND_NOT_MEASURED',
  'WIND_NOT_EXPECTED',
  'WIND_OUT_OF_RANGE',
  'HAS_RESULTS',
  'OPEN_QUESTIONS',
  'NOT_COMPLETE',
  'ALREADY_SO',
] as const;
export type CombinedRefusalCode = (typeof COMBINED_REFUSAL_CODES)[number];

/**
 * Why an entry that may well have happened stays outside the points. `OUT_OF_EVENT` ends by itself when the entrant is
 * in the event after all, and a ruling can only dismiss it; the others end by a ruling.
 */
export const COMBINED_HOLD_CODES = ['SIGNED_OFF', 'OUT_OF_EVENT', 'RESULT_TAKEN', 'AWAITS_REFEREE'] as const;
export type CombinedHoldCode = (typeof COMBINED_HOLD_CODES)[number];

/** What is worth saying about an accepted entry. */
export const COMBINED_NOTICE_CODES = ['EARLIER_EVENT_OPEN', 'FAR_OUTSIDE', 'WIND_TO_COME'] as const;
export type CombinedNoticeCode = (typeof COMBINED_NOTICE_CODES)[number];

export type CombinedVerdict =
  | { readonly standing: 'accepted'; readonly notices: readonly CombinedNoticeCode[] }
  | { readonly standing: 'held'; readonly hold: Objection<CombinedHoldCode> }
  | { readonly standing: 'refused'; readonly refusal: Objection<CombinedRefusalCode> };
