import type { Timing } from '../combined/combined-mark.js';
import { isTrackEvent, type CombinedEventCode } from '../combined/scoring-table.js';
import { formatMark } from '../quantities/mark.js';

/**
 * Writes a mark of a combined events competition, whole hundredths of a second or of a metre, so that
 * `parseCombinedMark` reads it again. A time by hand in whole tenths is written with one decimal.
 */
export function formatCombinedMark(hundredths: number, event: CombinedEventCode, timing: Timing): string {
  return isTrackEvent(event) ? formatTime(hundredths, timing) : formatMark(hundredths, 'cm');
}

/** Writes a time, whole hundredths of a second; minutes from 60 s on. */
export function formatTime(hundredths: number, timing: Timing): string {
  const minutes = Math.floor(hundredths / 6000);
  const seconds = Math.floor(hundredths / 100) % 60;
  const decimals = String(hundredths % 100).padStart(2, '0');
  const shown = timing === 'hand' && decimals.endsWith('0') ? decimals.slice(0, 1) : decimals;
  return minutes === 0 ? `${seconds}.${shown}` : `${minutes}:${String(seconds).padStart(2, '0')}.${shown}`;
}
