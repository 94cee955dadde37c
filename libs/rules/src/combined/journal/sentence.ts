import { floor, fraction, multiply, type Fraction } from '../../quantities/fraction.js';
import { ordinal } from '../../ranking/decision.js';
import type { CombinedWind, CombinedWindRule } from '../combined-wind.js';
import type { StandingRow } from './standing.js';

/** Why an entrant stands where he stands, in one sentence. `before`: the row placed just before, if there is one. */
export function combinedSentence(row: StandingRow, before: StandingRow | null): string {
  if (row.isWaiting) return 'No result yet';
  if (row.status === 'GUEST') return `A guest, outside the places: ${row.total} points`;
  if (row.status !== null) {
    return row.status === 'DNS'
      ? 'Did not start'
      : `Out of the event, with ${row.total} points in what was started`;
  }
  const place = ordinal(row.place ?? 1);
  const total = `${row.total} points`;
  if (!before || row.decidedBy === 'first') return `${place}: ${total}, the most`;
  switch (row.decidedBy) {
    case 'more events':
      return `${place}: equal on ${total}, fewer events with the higher points`;
    case 'best events':
      return `${place}: equal on ${total} and on events with the higher points, the best event is worth less`;
    case 'equal':
      return `${place}: equal on ${total}, nothing parts them`;
    default:
      return `${place}: ${total}, ${before.total - row.total} behind`;
  }
}

/** What the winds mean for records and lists, in one sentence. */
export function combinedWindSentence(
  { legal, meanTenths, because }: CombinedWind,
  rule: CombinedWindRule,
): string {
  const limit = metres(rule.meanTenths);
  if (because === 'no wind') return 'No event with wind so far';
  if (because === 'not known') return 'A wind is not known, so the mean is not';
  if (because === 'each' && rule.eachTenths !== null)
    return `A wind of more than +${metres(rule.eachTenths)} m/s, which one event may not have`;
  const mean = meanTenths === null ? '' : ` of ${meanWindText(meanTenths)} m/s`;
  return legal ? `The mean wind${mean} is within +${limit}` : `The mean wind${mean} is over +${limit}`;
}

/** A mean wind in m/s with two decimals, to the nearest: `+1.93`. What is decided with it is the exact mean. */
export function meanWindText(meanTenths: Fraction): string {
  const hundredths = Number(floor(multiply(meanTenths, fraction(10))));
  const isNearerUp = Number(floor(multiply(meanTenths, fraction(20)))) > 2 * hundredths;
  const nearest = hundredths + (isNearerUp ? 1 : 0);
  const magnitude = Math.abs(nearest);
  const decimals = String(magnitude % 100).padStart(2, '0');
  return `${nearest < 0 ? '-' : '+'}${Math.floor(magnitude / 100)}.${decimals}`;
}

function metres(tenths: number): string {
  return `${Math.floor(tenths / 10)}.${tenths % 10}`;
}
