import { refused, throwsMissing, type Answer } from '../answer.js';
import { isMarked } from '../series.js';
import {
  assessedTrials,
  isPresent,
  notLookedFor,
  PRESENT_FROM,
  type AssessedSeries,
  type Severity,
} from './assessed.js';
import { mantelHaenszel, type FoulTable, type MantelHaenszel } from './mantel-haenszel.js';

/** How fouls go with a fault, over series of one athlete or over athletes. */
export interface FoulLink extends MantelHaenszel {
  /** The exact p where some count is expected below five, else that of the chi-square. */
  readonly decidingP: number;
  readonly throwsWith: number;
  readonly throwsWithout: number;
}

const LEAST_PER_STATE = 5;

/** `stratumOf` names what is compared within: the series for one athlete, the athlete for a squad. */
export function foulLink(
  all: readonly AssessedSeries[],
  stratumOf: (series: AssessedSeries) => string = ({ id }) => id,
  level = 0.95,
  presentFrom: Severity = PRESENT_FROM,
): Answer<FoulLink> {
  const tables = foulTables(all, stratumOf, presentFrom);
  const total = (of: (table: FoulTable) => number): number =>
    tables.reduce((sum, table) => sum + of(table), 0);
  const throwsWith = total((table) => table.withFoul + table.withValid);
  const throwsWithout = total((table) => table.withoutFoul + table.withoutValid);
  if (throwsWith + throwsWithout === 0) return notLookedFor(all);
  const fewer = Math.min(throwsWith, throwsWithout);
  if (fewer < LEAST_PER_STATE) return throwsMissing('LT_PER_STATE', fewer, LEAST_PER_STATE);
  const found = mantelHaenszel(tables, level);
  if (found === null) return refused('NOT_ESTIMABLE', 'throws', throwsWith, throwsWith + 1);
  const decidingP = found.sparse && found.exact ? found.exact.p : found.p;
  return { kind: 'answer', ...found, decidingP, throwsWith, throwsWithout };
}

export function foulTables(
  all: readonly AssessedSeries[],
  stratumOf: (series: AssessedSeries) => string,
  presentFrom: Severity = PRESENT_FROM,
): readonly FoulTable[] {
  const strata = new Map<string, { -readonly [cell in keyof FoulTable]: number }>();
  for (const series of all) {
    const stratum = stratumOf(series);
    const table = strata.get(stratum) ?? { withFoul: 0, withValid: 0, withoutFoul: 0, withoutValid: 0 };
    strata.set(stratum, table);
    for (const trial of assessedTrials(series)) {
      const state = isPresent(trial, presentFrom) ? 'with' : 'without';
      table[`${state}${isMarked(trial) ? 'Valid' : 'Foul'}`] += 1;
    }
  }
  return [...strata.values()];
}
