import type { ComponentChildren } from 'preact';
import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { n } from '../../labels/notebook/words.js';

export interface PlotTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

interface PlotProps {
  readonly title: string;
  /** What is to be seen, in words. */
  readonly desc: string;
  readonly height: number;
  /** Draws into so many pixels. */
  readonly draw: (width: number) => ComponentChildren;
  readonly legend?: ComponentChildren;
  /** The same as numbers. */
  readonly table: PlotTable;
}

const FIRST_WIDTH = 358;
const MOST_WIDTH = 720;

/** A drawing with its name, its words and its numbers: for eyes, for ears and for paper. */
export function Plot({ title, desc, height, draw, legend, table }: PlotProps) {
  const id = useId();
  const ref = useRef<HTMLElement>(null);
  const width = useSignal(FIRST_WIDTH);
  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0)
        width.value = Math.min(MOST_WIDTH, Math.round(entry.contentRect.width));
    });
    observer.observe(ref.current!);
    return () => observer.disconnect();
  }, []);
  return (
    <figure class="plot" ref={ref}>
      <figcaption>{title}</figcaption>
      <svg
        viewBox={`0 0 ${width.value} ${height}`}
        width={width.value}
        height={height}
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
      >
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-desc`}>{desc}</desc>
        {draw(width.value)}
      </svg>
      {legend}
      <details class="numbers">
        <summary>{n('plot.numbers')}</summary>
        <section class="scroll" aria-label={title} tabIndex={0}>
          <table>
            <caption class="hint">{desc}</caption>
            <thead>
              <tr>
                {table.head.map((text) => (
                  <th key={text} scope="col">
                    {text}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row, at) => (
                <tr key={at}>
                  {row.map((text, column) => (
                    <td key={column}>{text}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </details>
    </figure>
  );
}
