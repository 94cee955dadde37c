import type { Observation, Stage, TechniqueEvent, Thrown, Vocabulary } from '#technique';

/** Everything that is said of an analysis rests on this; another number makes every seed and every cache new. */
export const ANALYSIS_VERSION = 1;

/** A throw or a trial with what a reader of the history wants beside what statistics want. */
export interface KnownThrow extends Thrown {
  readonly onDate: string;
  /** The meet and the competition, or the place of practice. */
  readonly occasionName: string;
  readonly foul: string | null;
  readonly windTenths: number | null;
}

export interface FocusAsked {
  readonly id: string;
  readonly code: string;
  readonly how: 'task' | 'drill' | 'full-throw';
  readonly what: string | null;
  readonly from: string;
  readonly to: string | null;
}

/** What one analysis needs, as plain values: it is handed to another thread. */
export interface AnalysisTask {
  readonly throws: readonly KnownThrow[];
  readonly observations: readonly Observation[];
  readonly vocabulary: Vocabulary;
  readonly event: TechniqueEvent;
  /** `null`: nobody said; then nothing is held back as not taught. */
  readonly stage: Stage | null;
  readonly growing: boolean;
  readonly child: boolean;
  readonly focuses: readonly FocusAsked[];
  /** How often notes are dealt out anew. */
  readonly draws: number;
  /** Athlete, event, version of the data. */
  readonly seed: readonly string[];
  /** `YYYY-MM-DD`. */
  readonly today: string;
}

const DAY_MS = 86_400_000;

/** Days since 1970. */
export function dayOf(date: string): number {
  return Math.round(Date.parse(date) / DAY_MS);
}

export function dateOf(day: number): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}
