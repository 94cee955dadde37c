import type { Citation, Cited } from './rule-set.js';

/** What a protest is about, as far as rule sets give it another time. */
export const PROTEST_GROUNDS = ['rules', 'clerical', 'eligibility', 'judgement'] as const;
export type ProtestGround = (typeof PROTEST_GROUNDS)[number];

/** How long after a result was announced a protest may be made: minutes, always, or never. */
export type ProtestWindow = number | 'any time' | 'never';

/** How one federation lets results be protested. */
export interface ProtestRules {
  /** Counted from the announcement of the result; an amended one is announced anew. */
  readonly windows: Readonly<Record<ProtestGround, Cited<ProtestWindow>>>;
  /** Minutes after the referee's decision was told; `null`: the book names none. */
  readonly appealMinutes: Cited<number | null>;
  /** A failure protested at once may be measured, and is held. */
  readonly measuredUnderProtest: Citation;
  /** What is lodged with a written protest or an appeal. */
  readonly deposit: Citation;
}

/** Why somebody may be disqualified, as far as the books name it. */
export const DISQUALIFICATION_GROUNDS = [
  'CONDUCT',
  'ASSISTANCE',
  'FAILED_TO_TAKE_PART',
  'INELIGIBLE',
  'IMPLEMENT',
  'CLOTHING',
  'WARM_UP',
] as const;
export type DisqualificationGround = (typeof DISQUALIFICATION_GROUNDS)[number];
