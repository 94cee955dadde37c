import { printable, widthOf } from './text.js';

/** One column: numbers stand to the right, so that units lie under units. */
export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
  /** Left out when nothing stands in it. */
  readonly optional?: boolean;
}

function filled(text: string, width: number, align: Column['align']): string {
  const blank = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'left' ? text + blank : blank + text;
}

/** Columns of one width each, two blanks apart, a rule under the titles. Empty without rows. */
export function grid(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  if (rows.length === 0) return [];
  const lanes = columns.flatMap(({ title, align, optional = false }, index) => {
    const cells = rows.map((row) => printable(row[index] ?? ''));
    if (optional && cells.every((cell) => cell === '')) return [];
    const width = cells.reduce((widest, cell) => Math.max(widest, widthOf(cell)), widthOf(title));
    return [[title, '─'.repeat(width), ...cells].map((cell) => filled(cell, width, align))];
  });
  return Array.from({ length: rows.length + 2 }, (_, index) =>
    lanes
      .map((lane) => lane[index])
      .join('  ')
      .trimEnd(),
  );
}
