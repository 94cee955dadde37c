import { parseMark } from '../quantities/mark.js';
import { isTrackEvent, type CombinedEventCode } from './scoring-table.js';

export type Timing = 'electronic' | 'hand';

/** Minutes and seconds below 60, or seconds below 60; then hundredths, or tenths. */
const TIME = /^(?:([1-9]\d?):([0-5]\d)|([1-5]?\d))\.(\d\d?)$/;

/**
 * Reads a mark of a combined events competition as whole hundredths: of a second for a race, of a metre for a jump or
 * a throw. `null` when it is malformed; zero is.
 */
export function parseCombinedMark(text: string, event: CombinedEventCode, timing: Timing): number | null {
  if (isTrackEvent(event)) return parseTime(text, timing);
  const mark = parseMark(text);
  return mark?.unit === 'cm' ? mark.value : null;
}

/** Reads `10.39` or `4:36.40`, with minutes from 60 s on; one decimal is a time by hand. Whole hundredths. */
export function parseTime(text: string, timing: Timing): number | null {
  const parts = TIME.exec(text);
  if (!parts) return null;
  const [, minutes = '0', pastMinute = '0', seconds = pastMinute, decimals = ''] = parts;
  if (decimals.length === 1 && timing !== 'hand') return null;
  const hundredths = (Number(minutes) * 60 + Number(seconds)) * 100 + Number(decimals.padEnd(2, '0'));
  return hundredths === 0 ? null : hundredths;
}

/**
 * Hundredths added to a time taken by hand, which makes it the electronic time that the tables score alike (they have
 * separate columns; the difference is from memory, and two pairs of published qualifying standards agree with it).
 */
export function handTimingAddition(event: CombinedEventCode): number {
  return HAND_TIMING_HUNDREDTHS[event] ?? 0;
}

const HAND_TIMING_HUNDREDTHS: Readonly<Partial<Record<CombinedEventCode, number>>> = {
  '60m': 24,
  '100m': 24,
  '200m': 24,
  '60mh': 24,
  '100mh': 24,
  '110mh': 24,
  '400m': 14,
};
