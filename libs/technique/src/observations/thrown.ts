import type { Style, TechniqueEvent, Variant } from '../vocabulary/technique-event.js';

/** A throw or a jump as the notebook knows it: an attempt of a competition or one of practice. */
export interface Thrown {
  readonly id: string;
  readonly athlete: string;
  readonly thrownIn: 'competition' | 'practice';
  /** The competition, or the session. */
  readonly occasion: string;
  /** Days since any fixed day. */
  readonly day: number;
  readonly event: TechniqueEvent;
  readonly variant: Variant;
  readonly massG: number | null;
  /** Order within the occasion, from 1. */
  readonly round: number;
  readonly outcome: 'valid' | 'foul' | 'pass';
  /** `null` for a foul or a pass, and for a practice throw that nobody measured. */
  readonly markCm: number | null;
  /** Whether the mark was measured; practice marks are often paced or guessed. */
  readonly measured: boolean;
  /** How hard it was meant to be, in per cent, said before a practice throw; `null` where nobody said. */
  readonly effortPercent: number | null;
  /** A foul that the thrower made on purpose, to void a poor throw. */
  readonly voidedOnPurpose: boolean;
  /** Struck from the record later; what was noted stays, and counts for nothing. */
  readonly annulled: boolean;
  readonly styles: readonly Style[];
}
