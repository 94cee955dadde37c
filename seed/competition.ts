/** What one competition of the demonstration is, and what happens in it. */

export interface Line {
  readonly who: string;
  readonly cells: readonly string[];
  /** Round by round, `O`, `X`, `-` or `r`. */
  readonly jumpOff?: readonly string[];
  readonly flight?: string;
  readonly didNotStart?: true;
}

export interface DemoCompetition {
  readonly title: string;
  readonly input: Readonly<Record<string, unknown>>;
  /** Of the bar, as announced; only in a high jump or pole vault. */
  readonly heights?: readonly string[];
  /** In the order of competition. */
  readonly lines: readonly Line[];
  readonly signedOff?: true;
}

export const line = (who: string, ...cells: string[]): Line => ({ who, cells });
