import { scaleLinear } from 'd3-scale';
import type { ComponentChildren } from 'preact';

interface BarsProps {
  readonly rows: readonly {
    readonly label: string;
    readonly value: number;
    readonly text: string;
    readonly more?: ComponentChildren;
  }[];
}

const WIDTH = 320;

/** Few values with a name each: what stands in the row says all of it, the bar shows it. */
export function Bars({ rows }: BarsProps) {
  const x = scaleLinear([0, Math.max(...rows.map(({ value }) => Math.abs(value)), 0.001)], [0, WIDTH]);
  return (
    <ul class="bars">
      {rows.map(({ label, value, text, more }) => (
        <li key={label}>
          <p>
            <span>{label}</span> <strong>{text}</strong>
          </p>
          <svg viewBox={`0 0 ${WIDTH} 12`} aria-hidden="true">
            <rect class="bar" width={Math.max(2, x(Math.abs(value)))} height={12} />
          </svg>
          {more}
        </li>
      ))}
    </ul>
  );
}
