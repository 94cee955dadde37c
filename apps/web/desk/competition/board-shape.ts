import type { HoldCode, Standing } from '#rules';

/** A trial as it is shown in a row. */
export interface Cell {
  /** The entry; null: not taken yet. */
  readonly id: string | null;
  /** What stands in the column: a round, a height. */
  readonly column: string;
  readonly text: string;
  /** A wind, a protest. */
  readonly note: string | null;
  /** Why it was a failure. */
  readonly reason: string | null;
  /** Outside the places until the referee has ruled or what is missing has come in. */
  readonly hold: HoldCode | null;
}

export interface Row {
  readonly key: string;
  readonly place: number | null;
  readonly isEqual: boolean;
  /** The best, or why there is none. */
  readonly best: string;
  readonly why: string;
  readonly needs: readonly string[];
  readonly isUp: boolean;
  readonly cells: readonly Cell[];
}

/** Who is to act, and at what. */
export interface Turn {
  readonly key: string;
  readonly round: number;
  readonly flight: string | null;
  /** In units of the competition; null: there is no bar. */
  readonly height: number | null;
  readonly isJumpOff: boolean;
  readonly isUnderProtest: boolean;
}

/** One competition as the desk shows it. */
export interface Board {
  readonly phase: 'not started' | 'running' | 'jump-off' | 'complete' | 'official';
  readonly calls: readonly Turn[];
  readonly remaining: number;
  readonly rows: readonly Row[];
}

const SETTLED: ReadonlySet<Standing> = new Set(['counts', 'struck', 'displaced', 'dismissed']);

/** The reason for which a trial is outside the places; null: it is not. */
export function holdOf(standing: Standing): HoldCode | null {
  return SETTLED.has(standing) ? null : (standing as HoldCode);
}
