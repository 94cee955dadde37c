import type { InspectionOutcome } from './inspection.js';
import type { ImplementStanding } from './standing.js';

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

/** An entry of a log in which a correction is another entry, which names the one it replaces. */
export interface Replacing {
  readonly id: string;
  readonly replacesId: string | null;
}

/** The entries that count, each where the one stood that it replaces, however often that was corrected. */
export function inForce<T extends Replacing>(log: readonly T[]): T[] {
  const replacements = new Map(
    log.flatMap((one) => (one.replacesId === null ? [] : [[one.replacesId, one]])),
  );
  const lastOf = (entry: T): T => {
    let last = entry;
    for (let next = replacements.get(last.id); next; next = replacements.get(last.id)) last = next;
    return last;
  };
  return log.filter(({ replacesId }) => replacesId === null).map(lastOf);
}

/** One look at one implement, as far as its status depends on it. */
export interface Look extends Replacing {
  readonly kind: 'inspection' | 'recheck';
  readonly outcome: InspectionOutcome;
  /** The officials keep the implement. */
  readonly keptBack: boolean;
}

export const IMPLEMENT_STATUSES = [
  'not inspected',
  'incomplete',
  'passed',
  'failed',
  'kept back',
  'rechecked',
] as const;
/** `rechecked`: looked at again after it was used, and passed. */
export type ImplementStatus = (typeof IMPLEMENT_STATUSES)[number];

/** How an implement stands by everything that was found of it, in the order of finding. */
export function statusOf(log: readonly Look[]): ImplementStatus {
  const last = inForce(log).at(-1);
  if (!last) return 'not inspected';
  if (last.keptBack) return 'kept back';
  return last.outcome === 'passed' && last.kind === 'recheck' ? 'rechecked' : last.outcome;
}

/** What a status says to whoever wants to use the implement. */
export function standingOf(status: ImplementStatus): ImplementStanding {
  return status === 'rechecked' ? 'passed' : status;
}
