import type { Severity } from '../faults/assessed.js';
import type { View } from '../vocabulary/fault-definition.js';
import { codesReadAs, type Vocabulary } from '../vocabulary/vocabulary.js';

/**
 * What an observer looked for. Within it, what was not noted was not there. `noticed` is what happens without a
 * checklist: nothing is known of what was not noted, so it enters no number.
 */
export type Scope =
  | { readonly kind: 'codes'; readonly codes: readonly string[] }
  | {
      readonly kind: 'checklist';
      readonly name: string;
      readonly version: number;
      readonly codes: readonly string[];
    }
  | { readonly kind: 'noticed' };

export interface FaultMark {
  readonly code: string;
  /** 0 says the same as leaving it out. */
  readonly severity: Severity;
  readonly sure: boolean;
  /** Another fault of the same throw that it seemed to come from. */
  readonly causedBy: string | null;
}

/** One observer looking at one throw once. */
export interface Observation {
  readonly id: string;
  readonly throwId: string;
  readonly observer: string;
  /** As text that sorts by time; only its order matters here. */
  readonly observedAt: string;
  readonly method: 'live' | 'video';
  /** Whether the observer knew the mark before noting. */
  readonly markKnown: boolean;
  readonly view: View | null;
  readonly scope: Scope;
  readonly marks: readonly FaultMark[];
  readonly note: string | null;
}

/** What one observation says of one fault: three states, and "not ticked" is none of them. */
export type FaultAnswer =
  | { readonly state: 'present'; readonly severity: 1 | 2 | 3; readonly sure: boolean }
  | { readonly state: 'absent' }
  | { readonly state: 'not-assessed' };

/** Codes that were merged into this one count as it. */
export function answerOf(observation: Observation, code: string, vocabulary: Vocabulary): FaultAnswer {
  const codes = codesReadAs(vocabulary, code);
  const marks = observation.marks.filter((mark) => codes.includes(mark.code));
  const worst = marks.reduce<FaultMark | null>(
    (most, mark) => (mark.severity > (most?.severity ?? 0) ? mark : most),
    null,
  );
  if (worst !== null && worst.severity > 0) {
    return { state: 'present', severity: worst.severity as 1 | 2 | 3, sure: worst.sure };
  }
  return wasLookedFor(observation, codes) ? { state: 'absent' } : { state: 'not-assessed' };
}

/** A note of 0 is a look of its own, also without a scope. */
function wasLookedFor({ scope, marks }: Observation, codes: readonly string[]): boolean {
  const inScope = scope.kind !== 'noticed' && scope.codes.some((code) => codes.includes(code));
  return inScope || marks.some((mark) => codes.includes(mark.code));
}
