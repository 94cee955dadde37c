import { ordinal } from '../ranking/decision.js';
import type { ResultRow } from '../result/result-document.js';
import type { QualifyingRow, QualifyingTable } from './qualifying-table.js';

/** The terms of a qualification: the standard as it is written, and how many go on at least. */
export interface QualifyingTerms {
  readonly standard: string;
  readonly fill: number;
}

const ADMITTED: Readonly<Record<string, string>> = {
  qR: 'Admitted by the referee.',
  qJ: 'Admitted by the jury.',
  qD: 'Admitted by a draw.',
};

const WITHOUT_PLACE: Readonly<Record<NonNullable<ResultRow['status']>, string>> = {
  NM: 'No valid mark.',
  DQ: 'Disqualified.',
  DNS: 'Did not start.',
  GUEST: 'Competes out of the ranking.',
};

/** Why somebody goes on from a qualification, or does not, as things stand: one sentence. */
export function qualifyingReason(
  table: QualifyingTable,
  { row }: QualifyingRow,
  { standard, fill }: QualifyingTerms,
): string {
  const { qualified, status, mark, place } = row;
  if (qualified !== null && qualified in ADMITTED) return ADMITTED[qualified]!;
  if (place === null) return WITHOUT_PLACE[status ?? 'NM'];
  if (qualified === 'Q') return `Reached the standard of ${standard} with ${mark}.`;
  const standing = `${ordinal(place)} over all groups with ${mark}`;
  if (qualified === 'q') {
    const isLevel = table.levelForLast.some((level) => level.row === row);
    const going = table.byStandard + table.byPerformance;
    return isLevel
      ? `${standing}, level with others for the last of ${fill} places: all of them go on, ${going} in all.`
      : `${standing}, among the best ${fill}.`;
  }
  return `${standing}; ${missed(table, mark, { standard, fill })}.`;
}

function missed(table: QualifyingTable, mark: string | null, { standard, fill }: QualifyingTerms): string {
  const last = table.finalists.findLast((finalist) => finalist.row.qualified === 'q')?.row.mark;
  if (last === undefined) {
    return table.byStandard > 0 && fill > 0
      ? `${table.byStandard} reached the standard of ${standard}, and nobody is filled up with`
      : `the standard is ${standard}`;
  }
  return last === mark
    ? `the last who goes on has the same mark and is ahead by what breaks the tie`
    : `the last who goes on has ${last}`;
}
