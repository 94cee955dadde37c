import {
  COMBINED_TABLE_CODES,
  combinedCardOf,
  countCombinedField,
  writeSheet,
  type CombinedCard,
  type CombinedTableCode,
  type PlainObject,
} from '#rules';
import type { EntrantLine, LoadedCombined } from './combined-loaded.js';
import { tableOf } from './combined-loaded.js';

/** How an entrant is named in a sheet; `null`: nobody is, as in an archive. */
export type NameOf = ((line: EntrantLine) => string | null) | null;

/** As a sheet (`sectorline-combined/1`), as it stands, without guests; `null`: the format has not this programme. */
export function combinedSheet(loaded: LoadedCombined, nameOf: NameOf): PlainObject | null {
  const table = COMBINED_TABLE_CODES.find((code) => code === loaded.row.programme);
  return table === undefined ? null : writeSheet({ kind: 'combined', card: cardOf(loaded, table, nameOf) });
}

/** What it counts to (`sectorline-result/1`), as it stands: what is to come is worth nothing yet. */
export function combinedResult(loaded: LoadedCombined): object {
  // The code only names the table in a sheet: how it is counted is said by the table itself.
  const card = cardOf(loaded, 'heptathlon', null);
  const field = { table: tableOf(loaded.row), timing: card.timing, rows: card.rows };
  const results = countCombinedField(field, loaded.row.ties).map(({ row }) => row);
  return { format: 'sectorline-result/1', results, problems: [] };
}

function cardOf(
  { state, row, entrants }: LoadedCombined,
  table: CombinedTableCode,
  nameOf: NameOf,
): CombinedCard {
  const lines = new Map(entrants.map((line) => [line.entrant.id, line]));
  return combinedCardOf(state, table, row.timing, (key) => {
    const line = lines.get(key)!;
    return { name: nameOf?.(line) ?? null, club: line.club };
  });
}
