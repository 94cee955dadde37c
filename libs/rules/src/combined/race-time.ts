import { parseTime } from './combined-mark.js';

/** The time of a race as it was taken: electronic times have hundredths, those by hand tenths. */
export interface RaceTime {
  readonly hundredths: number;
  readonly timing: 'electronic' | 'hand';
}

/** Reads `10.39` or `4:36.40`, by hand `10.4`; minutes from 60 s on, up to 99:59.99. `null` when it is malformed. */
export function parseRaceTime(text: string): RaceTime | null {
  const electronic = parseTime(text, 'electronic');
  if (electronic !== null) return { hundredths: electronic, timing: 'electronic' };
  const byHand = parseTime(text, 'hand');
  return byHand === null ? null : { hundredths: byHand, timing: 'hand' };
}

/** Writes a time: the inverse of `parseRaceTime`. */
export function formatRaceTime({ hundredths, timing }: RaceTime): string {
  const decimals = timing === 'hand' ? String((hundredths % 100) / 10) : twoDigits(hundredths % 100);
  const seconds = Math.floor(hundredths / 100);
  if (seconds < 60) return `${seconds}.${decimals}`;
  return `${Math.floor(seconds / 60)}:${twoDigits(seconds % 60)}.${decimals}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
