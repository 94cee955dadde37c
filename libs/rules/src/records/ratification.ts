import type { RecordKind } from './record-list.js';

/** A decision of the referee on a mark as a record. A later one on the same mark and kind replaces it. */
export interface Ratification {
  /** The performance. */
  readonly performance: string;
  readonly kind: Extract<RecordKind, 'club record' | 'meet record'>;
  readonly decision: RatificationDecision;
  readonly reason: string;
}

export type RatificationDecision = 'ratified' | 'refused';

/** The decisions in force, by what they are about. `ratifications`: in the order in which they were made. */
export function decisionsOf(
  ratifications: readonly Ratification[],
): ReadonlyMap<string, RatificationDecision> {
  return new Map(ratifications.map((one) => [decisionKey(one.kind, one.performance), one.decision]));
}

export function decisionKey(kind: RecordKind, performance: string): string {
  return JSON.stringify([kind, performance]);
}
