import type { InspectionOutcome } from './inspection.js';

/** One look at one implement, in the order in which they were made. */
export interface InspectionEntry {
  /** How the meet names the implement (a number on a sticker). */
  readonly implement: string;
  readonly outcome: InspectionOutcome;
  /** The attempt after which it was looked at again, for a record; `null`: at check-in. */
  readonly attempt: string | null;
}

/** How an implement stands: as it was last found; `null`: nobody looked at it. */
export function implementStatus(
  log: readonly InspectionEntry[],
  implement: string,
): InspectionOutcome | null {
  return log.findLast((entry) => entry.implement === implement)?.outcome ?? null;
}

export type Recheck = InspectionOutcome | 'missing' | 'other implement';

/**
 * Whether the implement of an attempt was looked at again after it, as a record asks for. A later look at the same
 * attempt replaces an earlier one.
 */
export function recheckOf(log: readonly InspectionEntry[], attempt: string, implement: string): Recheck {
  const entry = log.findLast((one) => one.attempt === attempt);
  if (!entry) return 'missing';
  return entry.implement === implement ? entry.outcome : 'other implement';
}
