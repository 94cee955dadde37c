import type { EnteredResultRow } from '#persistence';
import { formatRaceTime, formatWind, type MatchEvent } from '#rules';
import type { EnteredResult } from './entered-results.types.js';

/** Those that count: neither replaced nor taken back, in the order of entering. */
export function countingOf(rows: readonly EnteredResultRow[]): EnteredResultRow[] {
  const replaced = new Set(rows.map(({ replacesId }) => replacesId));
  return rows.filter(({ id, lines }) => !replaced.has(id) && lines.length > 0);
}

/** An entered result as team scoring looks at it. */
export function enteredEvent({ isRelay, categorySex, categoryAge, lines }: EnteredResultRow): MatchEvent {
  return { isRelay, sex: categorySex, age: categoryAge, rows: inOrder(lines) };
}

export function enteredView(row: EnteredResultRow): EnteredResult {
  return {
    id: row.id,
    title: row.title,
    isRelay: row.isRelay,
    categorySex: row.categorySex,
    categoryAge: row.categoryAge,
    lines: inOrder(row.lines).map(({ time, wind, ...line }) => ({
      ...line,
      time: time && formatRaceTime(time),
      wind: wind === null ? null : formatWind(wind),
    })),
    replacesId: row.replacesId,
    enteredAt: new Date(row.enteredAt),
  };
}

const UNPLACED = Number.MAX_SAFE_INTEGER;

/** Best first; level ones, and those without a place at the end, as they were entered. */
function inOrder(lines: EnteredResultRow['lines']): EnteredResultRow['lines'][number][] {
  return [...lines].sort((a, b) => (a.place ?? UNPLACED) - (b.place ?? UNPLACED));
}
