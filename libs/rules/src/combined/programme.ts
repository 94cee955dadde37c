import {
  COMBINED_TABLE_CODES,
  COMBINED_TABLES,
  THROWS_PENTATHLON,
  type CombinedTable,
} from './combined-tables.js';
import type { ScoringSex } from './scoring-table.js';

/** Every programme of combined events: those of the sheet format, and the throws pentathlon. */
export const COMBINED_PROGRAMME_CODES = [...COMBINED_TABLE_CODES, 'throws-pentathlon'] as const;
export type CombinedProgrammeCode = (typeof COMBINED_PROGRAMME_CODES)[number];

/** Whose formulas may score a programme. */
export function scoringSexesOf(code: CombinedProgrammeCode): readonly ScoringSex[] {
  return code === 'throws-pentathlon' ? ['W', 'M'] : [COMBINED_TABLES[code].scoredBy];
}

/** The programme as that sex has it; `null`: it has none of that name. */
export function combinedProgramme(code: CombinedProgrammeCode, scoredBy: ScoringSex): CombinedTable | null {
  if (code === 'throws-pentathlon') return THROWS_PENTATHLON[scoredBy];
  const table = COMBINED_TABLES[code];
  return table.scoredBy === scoredBy ? table : null;
}
