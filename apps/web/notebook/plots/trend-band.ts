import type { ImplementFindings } from '../athlete/findings.js';

export interface TrendBand {
  /** Day in ms, centimetres. */
  readonly middle: readonly (readonly [number, number])[];
  /** Day in ms, lower and upper centimetres. */
  readonly band: readonly (readonly [number, number, number])[];
}

const THIRTY_DAYS_MS = 30 * 86_400_000;

function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * The slope that the server gives, drawn through the middle of the middle marks of competitions (as the line of Theil
 * and Sen lies), with the slopes at both ends of its interval around it. Null: there is no trend to be drawn.
 */
export function trendBand({ progress, trend }: ImplementFindings): TrendBand | null {
  const slope = trend?.cmPer30Days ?? null;
  const { low = null, high = null } = trend?.interval ?? {};
  const meets = progress.filter(({ inCompetition }) => inCompetition);
  if (slope === null || low === null || high === null || meets.length < 2) return null;
  const days = meets.map(({ onDate }) => Date.parse(onDate));
  const day = middleOf(days);
  const cm = middleOf(meets.map(({ medianCm }) => medianCm));
  const at = (when: number, cmPer30Days: number): number =>
    cm + (cmPer30Days * (when - day)) / THIRTY_DAYS_MS;
  const ends = [Math.min(...days), day, Math.max(...days)];
  return {
    middle: ends.map((when) => [when, at(when, slope)]),
    band: ends.map((when) => {
      const sides = [at(when, low), at(when, high)];
      return [when, Math.min(...sides), Math.max(...sides)];
    }),
  };
}
