import { parseWind } from '#rules';

/** A wind as a spreadsheet leaves it: `1.3` for `+1.3`. Read as it is stored; `null`: it is none. */
export function windCell(cell: string): string | null {
  const text = /^\d/.test(cell) ? `+${cell}` : cell.toUpperCase();
  return parseWind(text) === null ? null : text;
}
