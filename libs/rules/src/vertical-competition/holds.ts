import { awaitsReferee } from '../journal/targets.js';
import type { HoldCode } from '../journal/verdict.js';
import type { VerticalEntry } from './entry.js';
import { turnOf } from './jumps.js';
import { barHold } from './progression.js';
import type { VerticalState } from './state.js';

/** Why an entry waits for a referee, known before it is applied: from the journal alone. */
export function holdBefore(state: VerticalState, entry: VerticalEntry): HoldCode | null {
  if (state.signedOff && entry.kind !== 'reopening' && entry.kind !== 'sign-off') return 'SIGNED_OFF';
  if (entry.kind === 'bar') return barHold(state, entry);
  if (entry.kind === 'jump' || entry.kind === 'jump-off') {
    const turn = turnOf(entry);
    const isTaken = [...state.attempts.values()].some((other) => {
      const gone =
        other.standing === 'struck' || other.standing === 'displaced' || other.standing === 'dismissed';
      return !gone && turnOf(other) === turn;
    });
    if (isTaken) return 'TRIAL_TAKEN';
    const jumped = entry.outcome === 'cleared' || entry.outcome === 'failed';
    return jumped && state.safety.stops.length > 0 ? 'DURING_INTERRUPTION' : null;
  }
  return awaitsReferee(state, entry) ? 'AWAITS_REFEREE' : null;
}

/**
 * What a jump has to wait for: that its height is one of the competition, that the bar comes to it. A pass or a
 * retirement can be told before.
 */
export function waitsFor(state: VerticalState, entry: VerticalEntry): HoldCode | null {
  if (entry.kind !== 'jump') return null;
  if (!state.heights.includes(entry.height)) return 'NOT_A_HEIGHT';
  const jumped = entry.outcome === 'cleared' || entry.outcome === 'failed';
  return jumped && entry.height > state.bar ? 'ABOVE_THE_BAR' : null;
}
