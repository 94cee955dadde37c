import type { ListLine } from './documents.js';

/** The list with one of its lines at another place; the others close up. */
export function movedLine<T>(lines: readonly T[], from: number, to: number): readonly T[] {
  const line = lines[from];
  if (line === undefined || to < 0 || to >= lines.length || from === to) return lines;
  return lines.toSpliced(from, 1).toSpliced(to, 0, line);
}

/** The list with another flight of one of its lines. */
export function withFlight(
  lines: readonly ListLine[],
  at: number,
  flight: string | null,
): readonly ListLine[] {
  return lines.map((line, place) =>
    place === at ? { ...line, competitor: { ...line.competitor, flight } } : line,
  );
}
