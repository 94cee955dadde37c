import { scaleLinear } from 'd3-scale';
import type { Interval } from '../athlete/findings.js';

interface IntervalBarProps {
  readonly value: number;
  readonly interval: Interval | null;
  readonly domain: readonly [number, number];
  /** Where nothing would be. */
  readonly zero: number | null;
  readonly label: string;
}

const WIDTH = 320;
const HEIGHT = 40;

/** A value in per cent with how sure it is: a mark on a bar; an end without a bound runs out of the drawing. */
export function IntervalBar({ value, interval, domain, zero, label }: IntervalBarProps) {
  const x = scaleLinear([...domain], [6, WIDTH - 6]).clamp(true);
  return (
    <svg class="interval" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      <line class="axis" x1={6} x2={WIDTH - 6} y1={22} y2={22} />
      {zero !== null && <line class="zero" x1={x(zero)} x2={x(zero)} y1={2} y2={24} />}
      {interval && (
        <rect
          class="band strong"
          x={x(interval.low ?? domain[0])}
          width={Math.max(2, x(interval.high ?? domain[1]) - x(interval.low ?? domain[0]))}
          y={8}
          height={10}
        />
      )}
      {[domain[0], ...(zero === null ? [] : [zero]), domain[1]].map((end, at, ends) => (
        <text
          key={end}
          class="tick"
          x={x(end)}
          y={37}
          text-anchor={at === 0 ? 'start' : at === ends.length - 1 ? 'end' : 'middle'}
        >
          {String(Math.round(end)).replace('-', '−')} %
        </text>
      ))}
      <path class="value" d={`M${x(value)} 3l6 10l-6 10l-6 -10z`} />
    </svg>
  );
}
