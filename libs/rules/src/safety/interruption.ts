import type { RuleSetCode } from '../codes.js';
import { cited } from '../rule-sets/citing.js';
import type { Cited } from '../rule-sets/rule-set.js';

/** Why nobody is called any more. */
export const INTERRUPTION_CAUSES = [
  'lightning',
  'person-in-sector',
  'cage-or-net',
  'wet-surface',
  'implement',
  'injury',
  'weather',
  'light',
  'other',
] as const;
export type InterruptionCause = (typeof INTERRUPTION_CAUSES)[number];

/** A stop that has not been cleared yet. */
export interface Stop {
  /** The id of its entry. */
  readonly entry: string;
  readonly cause: InterruptionCause;
  readonly note: string | null;
  /** When it was seen, as told by whoever entered it: milliseconds since the epoch. */
  readonly seenAt: number;
}

/** What a journal says of safety. */
export interface SafetyState {
  /** What has stopped the competition, in the order of entering; empty: nothing. */
  readonly stops: readonly Stop[];
  /** The checklist has been confirmed since the competition was opened. */
  readonly isConfirmed: boolean;
  /** A new warm-up was granted with the latest all-clear. */
  readonly hasNewWarmUp: boolean;
}

/** What one does about a stop, beside waiting for the all-clear: the usual cautions, never a guarantee. */
export const INTERRUPTION_CAUTIONS: Readonly<Record<InterruptionCause, string>> = {
  lightning:
    'Everybody off the field and into a shelter. Each new flash or thunder is entered and starts the wait anew.',
  'person-in-sector': 'Nobody holds an implement until the sector is empty and closed again.',
  'cage-or-net': 'Nobody throws until the gap is closed and the referee has looked at it.',
  'wet-surface': 'Dry the circle or the runway; try the footing before anybody is called.',
  implement: 'Take the implement out and have it looked at before anybody uses it again.',
  injury: 'Help first. Nobody is called until those who help have left the field.',
  weather: 'Wait until the referee says that it can go on.',
  light: 'Wait until the landing can be seen from the circle and from the sector.',
  other: 'Wait until the referee says that it can go on.',
};

const MINUTE_MS = 60_000;

/**
 * Minutes to wait after the last flash or thunder. The waits of the books differ and local codes may ask for more:
 * the referee, the venue's rules and local law decide.
 */
export function lightningWait(rules: RuleSetCode): Cited<number> {
  if (rules === 'NFHS') {
    return cited(30, 'NFHS guidelines on handling practices and contests during lightning', 'read in part');
  }
  return cited(30, 'common practice, no published source in the rule set', 'memory');
}

/** The earliest moment at which the competition may go on, in ms; `null`: no lightning among the stops. */
export function waitsUntil(stops: readonly Stop[], rules: RuleSetCode): number | null {
  const strikes = stops.filter(({ cause }) => cause === 'lightning').map(({ seenAt }) => seenAt);
  return strikes.length === 0 ? null : Math.max(...strikes) + lightningWait(rules).value * MINUTE_MS;
}
